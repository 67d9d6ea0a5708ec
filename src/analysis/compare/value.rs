//! What one plan has of one figure.

use crate::base::quantiles::quantiles;

/// Shares of all members between which a band runs, with the middle.
pub const SHARES: [f64; 3] = [0.05, 0.5, 0.95];

/// What one plan has of one figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Value {
    /// There is none: no change and so no jump, no price and so no cost.
    Nothing,
    /// A day later than the last one of the run.
    Later,
    /// The same in every member, or a day by which so many of 100 are ready.
    One(f64),
    /// The 5, 50 and 95 % points over the members.
    Band([f64; 3]),
}

impl Value {
    /// The band of what members have; nothing where none has it.
    pub fn of(members: impl Iterator<Item = Option<f64>>) -> Value {
        let mut values: Vec<f64> = members.flatten().collect();
        match values.is_empty() {
            true => Value::Nothing,
            false => Value::Band(quantiles(&mut values, &SHARES)),
        }
    }
    /// A day of the run, or later.
    pub fn of_day(day: Option<u32>) -> Value {
        day.map_or(Value::Later, |day| Value::One(f64::from(day)))
    }
    /// The middle; infinite for a day past the end, none where there is nothing.
    pub fn middle(&self) -> Option<f64> {
        match self {
            Value::Nothing => None,
            Value::Later => Some(f64::INFINITY),
            Value::One(value) | Value::Band([_, value, _]) => Some(*value),
        }
    }
    /// The 5 and the 95 % point, where it is a band.
    pub fn ends(&self) -> Option<[f64; 2]> {
        match self {
            Value::Band([low, _, high]) => Some([*low, *high]),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_is_made_of_the_members_that_have_the_figure() {
        let members = (0..=100).map(|n| (n % 2 == 0).then(|| f64::from(n)));
        // 0, 2, 4 … 100: type 7 at 2.5, 25 and 47.5 of 50 steps
        assert_eq!(Value::of(members), Value::Band([5.0, 50.0, 95.0]));
        assert_eq!(Value::of([None, None].into_iter()), Value::Nothing);
    }
}
