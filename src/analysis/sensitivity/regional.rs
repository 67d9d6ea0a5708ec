//! What runs that meet a condition have in common: inputs whose values lie apart from those of the other runs
//! (Spear & Hornberger 1980, Water Res. 14: 43).

use super::distance::distance;
use crate::base::quantiles::quantiles;

/// How an input differs between runs that meet a condition and the others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Region {
    /// How far the two lie apart, from 0 to 1.
    pub apart: f64,
    /// A quarter, half and three quarters of the runs that meet it lie below these values.
    pub meeting: [f64; 3],
    /// The same of the others.
    pub others: [f64; 3],
}

/// Looks at one input; none where all runs meet the condition, or none does.
pub fn region(input: &[f64], meets: &[bool]) -> Option<Region> {
    const QUARTERS: [f64; 3] = [0.25, 0.5, 0.75];
    let side = |wanted: bool| -> Vec<f64> {
        let runs = input.iter().zip(meets);
        runs.filter(|(_, meets)| **meets == wanted)
            .map(|(value, _)| *value)
            .collect()
    };
    let (mut meeting, mut others) = (side(true), side(false));
    if meeting.is_empty() || others.is_empty() {
        return None;
    }
    let quarters = [&mut meeting, &mut others].map(|values| quantiles(values, &QUARTERS));
    Some(Region {
        apart: distance(&meeting, &others), // in order by now
        meeting: quarters[0],
        others: quarters[1],
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_condition_on_an_input_sets_it_apart_and_no_other() {
        let first: Vec<f64> = (0..100).map(f64::from).collect();
        let other: Vec<f64> = (0..100).map(|run| f64::from(run * 37 % 100)).collect();
        let meets: Vec<bool> = first.iter().map(|value| *value < 40.0).collect();
        let found = region(&first, &meets).unwrap();
        assert_eq!(found.apart, 1.0);
        assert_eq!(found.meeting[1], 19.5);
        assert_eq!(found.others[1], 69.5);
        assert!(region(&other, &meets).unwrap().apart < 0.15);
        assert_eq!(region(&first, &[true; 100]), None);
    }
}
