//! Courses: the curves of one step at the times that are drawn.

use crate::analysis::compare::strategy::Strategy;
use crate::base::clock::DAY;
use crate::engine::result::{Reading, Side};

use super::Window;
use super::trace::Trace;

/// The curves of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    /// Minutes since midnight of day 0; twice where something happens, before and after it.
    pub minutes: Vec<u32>,
    /// The values of each trace, in the order asked for.
    pub values: Vec<Vec<f64>>,
}

impl Course {
    /// Of a step: at even times of the window, and on both sides of every event in it.
    pub fn of(step: &Strategy<'_>, traces: &[Trace], window: Window) -> Course {
        let (from, until) = (window.first_day * DAY, (window.last_day + 1) * DAY);
        let readings = step.outcome.run.shown().iter();
        let first = step.outcome.run.input.filled_at;
        let drawn = |r: &&Reading| {
            let even = r.minute % window.every_minutes == 0 || r.minute == first;
            (from..=until).contains(&r.minute) && (even || r.side != Side::Plain)
        };
        let readings: Vec<&Reading> = readings.filter(drawn).collect();
        let values = |trace: &Trace| readings.iter().map(|r| trace.value(step, r)).collect();
        Course {
            minutes: readings.iter().map(|r| r.minute).collect(),
            values: traces.iter().map(values).collect(),
        }
    }
    /// The value of a trace at a minute: after what happens then, straight between two points.
    pub fn at(&self, trace: usize, minute: u32) -> Option<f64> {
        let after = self.minutes.partition_point(|&m| m <= minute);
        let values = &self.values[trace];
        let left = after.checked_sub(1)?;
        let (Some(&from), Some(&to)) = (values.get(left), values.get(after)) else {
            return values.get(left).copied();
        };
        let (start, end) = (self.minutes[left], self.minutes[after]);
        let share = f64::from(minute - start) / f64::from(end - start);
        Some(from + share * (to - from))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_read_straight_between_points_and_after_what_happens_at_one() {
        let course = Course {
            minutes: vec![0, 100, 100, 200],
            values: vec![vec![0.0, 2.0, 1.0, 3.0]],
        };
        let at = |minute| course.at(0, minute);
        assert_eq!(
            [at(50), at(100), at(150), at(200)],
            [1.0, 1.0, 2.0, 3.0].map(Some)
        );
        assert_eq!(at(999), Some(3.0));
    }
}
