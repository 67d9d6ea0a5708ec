//! From where to where a figure runs over a grid, in words.

use crate::analysis::compare::lines::Line;
use crate::analysis::compare::value::Value;
use crate::analysis::sweep::Sweep;

use super::words::{bare, full, point};

/// The points with the lowest and the highest middle, the first of several; none where no point has any. A day
/// later than the last is higher than all.
pub fn extremes(line: &Line) -> Option<[usize; 2]> {
    let known = line.values.iter().enumerate();
    let known: Vec<(usize, f64)> = known
        .filter_map(|(number, value)| Some((number, value.middle()?)))
        .collect();
    let lowest = known.iter().min_by(|a, b| a.1.total_cmp(&b.1))?;
    let highest = known.iter().rev().max_by(|a, b| a.1.total_cmp(&b.1))?;
    Some([lowest.0, highest.0])
}

/// Whether a figure is written the same at every point.
pub fn is_flat(line: &Line) -> bool {
    let mut words = line.values.iter().map(|value| bare(line, value));
    let first = words.next();
    first.is_some_and(|first| words.all(|other| other == first))
}

/// `peak ammonia runs from 1.9 mg N/L (every day, 70 %) to 5.1 (every 7 days, 20 %)`, and the same in fewer words.
pub fn sentences(sweep: &Sweep, place: usize) -> Vec<String> {
    let line = &sweep.lines[place];
    let name = line.short;
    let Some([lowest, highest]) = extremes(line) else {
        return vec![format!("{name}: there is none at any point")];
    };
    let [low, high] = [lowest, highest].map(|number| &line.values[number]);
    let at = |number: usize| point(&sweep.axes, &sweep.points[number].at);
    let from = full(line, low, sweep.last_day);
    let to = match (line.unit, high) {
        ("day", _) | (_, Value::Later) => full(line, high, sweep.last_day),
        _ => bare(line, high),
    };
    if bare(line, low) == bare(line, high) {
        return vec![format!("{name}: {from}, the same everywhere")];
    }
    vec![
        format!(
            "{name} runs from {from} ({}) to {to} ({})",
            at(lowest),
            at(highest)
        ),
        format!("{name} runs from {from} to {to}"),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::compare::alike::Alike;
    use crate::analysis::figure_list::Better;

    #[test]
    fn of_several_lowest_and_highest_points_the_first_is_told() {
        let values = [2.0, 1.0, 1.0, 5.0, 5.0].map(Value::One);
        let mut line = Line {
            name: "made_up",
            unit: "g",
            what: "",
            short: "made up",
            better: Better::Less,
            told_from: 0.1,
            values: values.to_vec(),
            alike: Alike::default(),
        };
        assert_eq!(extremes(&line), Some([1, 3]));
        assert!(!is_flat(&line));
        line.values.push(Value::Later);
        assert_eq!(extremes(&line), Some([1, 5]));
        line.values = vec![Value::Nothing; 2];
        assert_eq!(extremes(&line), None);
        line.values = [280.1, 280.2].map(Value::One).to_vec();
        assert!(is_flat(&line), "as it is written");
    }
}
