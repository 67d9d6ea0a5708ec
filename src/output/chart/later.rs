//! An axis of days up to the end of a run, and above it a line for what is later than that.

use super::axis::{Axis, Tick};

/// Name of the line on which days later than the last lie.
pub const LATER: &str = "later";
/// How much higher than the last day a later one is drawn: so far that both have room for their names.
const ABOVE_THE_LAST: f64 = 1.08;

/// Where a day later than the last is drawn.
pub fn later(last_day: u32) -> f64 {
    ABOVE_THE_LAST * f64::from(last_day)
}

/// The axis over some heights, from what `axis` makes of those within the run.
pub fn up_to_the_end(heights: &[f64], last_day: u32, axis: impl Fn(&[f64]) -> Axis) -> Axis {
    let (end, later) = (f64::from(last_day), later(last_day));
    let known = heights.iter().copied().filter(|height| *height <= end);
    let known: Vec<f64> = known.chain([end]).collect();
    let mut axis = axis(&known);
    axis.ticks.retain(|tick| tick.value < end - (later - end));
    axis.ticks.push(Tick {
        value: end,
        words: last_day.to_string(),
    });
    axis.high = end;
    if heights.contains(&later) {
        axis.high = later;
        axis.ticks.push(Tick {
            value: later,
            words: LATER.to_string(),
        });
    }
    axis
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::output::chart::axis::around;

    fn names(heights: &[f64]) -> (f64, Vec<String>) {
        let axis = up_to_the_end(heights, 56, |known| around(20.0, known[known.len() - 1], 4));
        let ticks = axis.ticks.into_iter().map(|tick| tick.words);
        (axis.high, ticks.collect())
    }

    #[test]
    fn days_reach_to_the_end_of_the_run_and_what_is_later_has_a_line_of_its_own() {
        let within = names(&[24.0, 30.0]);
        assert_eq!(
            within,
            (
                56.0,
                ["20", "30", "40", "50", "56"].map(String::from).into()
            )
        );
        let beyond = names(&[24.0, later(56)]);
        let ticks = ["20", "30", "40", "50", "56", "later"].map(String::from);
        assert_eq!(beyond, (later(56), ticks.into()));
    }
}
