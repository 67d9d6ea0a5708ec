//! Which times are looked at closely, and how closely.

use std::ops::Range;

use crate::base::clock::DAY;

/// Which times are looked at closely, and how closely. Where two overlap, the first holds.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct CloseUps {
    /// Minutes of the run, and every how many of them the tank is read.
    ranges: Vec<(Range<u32>, u32)>,
}

impl CloseUps {
    /// None: the tank is read at the start of every step and at events.
    pub fn none() -> Self {
        CloseUps::default()
    }
    /// Some days too, every so many minutes.
    #[must_use]
    pub fn of_days(mut self, days: &[u32], every_minutes: u32) -> Self {
        let minutes = days.iter().map(|day| day * DAY..(day + 1) * DAY);
        self.ranges
            .extend(minutes.map(|range| (range, every_minutes)));
        self
    }
    /// The whole run too, every so many minutes.
    #[must_use]
    pub fn throughout(mut self, every_minutes: u32) -> Self {
        self.ranges.push((0..u32::MAX, every_minutes));
        self
    }
    /// Every how many minutes the step from a minute on is looked into.
    pub fn at(&self, minute: u32) -> Option<u32> {
        let mut ranges = self.ranges.iter();
        ranges
            .find(|(range, _)| range.contains(&minute))
            .map(|(_, every)| *every)
    }
    /// Whether nothing is looked at closely.
    pub fn is_none(&self) -> bool {
        self.ranges.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_may_be_seen_more_closely_than_the_rest() {
        let closely = CloseUps::none().of_days(&[2], 5).throughout(10);
        assert_eq!(closely.at(2 * DAY - 30), Some(10));
        assert_eq!(closely.at(2 * DAY), Some(5));
        assert_eq!(closely.at(3 * DAY), Some(10));
        assert_eq!(CloseUps::none().at(0), None);
    }
}
