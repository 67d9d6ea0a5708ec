//! How large a sweep is, before it is run.

use crate::engine::input::ModelInput;

/// Points of the largest grid that is run without being asked twice.
pub const MOST_POINTS: usize = 400;
/// Seconds of the longest sweep that is run without being asked twice.
pub const MOST_SECONDS: f64 = 60.0;
/// What a day of one tank takes on one core, milliseconds. Measured as the processor time of sweeps of four points
/// and 51 runs each, 71 days long: 0.035 on `sixty` and `heavy-early-changes`, 0.039 on `dense-still`.
const MS_PER_DAY: f64 = 0.04;
/// Tanks with animals are run with them and without, and stocked on the days that would do: 0.074 ms a day on
/// `power-cut`, 0.080 on `handover-in-may`, measured in the same way.
const WITH_ANIMALS: f64 = 2.0;

/// How large a sweep is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Points of the grid.
    pub points: usize,
    /// Runs in all: the central one of each point and its members.
    pub runs: usize,
    /// About how long they take, seconds; a forecast, nothing hangs on it but whether it is asked twice.
    pub seconds: f64,
}

impl Size {
    /// The size of a sweep of tanks like this one.
    ///
    /// ```text
    /// seconds = points · (1 + members) · days with the look-ahead · ms per day / threads
    /// ```
    pub fn of(points: usize, members: usize, input: &ModelInput, threads: usize) -> Size {
        let runs = points.saturating_mul(members + 1);
        let days = f64::from(input.last_day + 1 + input.lookahead_days);
        let times = if input.has_animals() {
            WITH_ANIMALS
        } else {
            1.0
        };
        let ms = runs as f64 * days * MS_PER_DAY * times;
        Size {
            points,
            runs,
            seconds: ms / 1000.0 / threads.max(1) as f64,
        }
    }
    /// Whether it is so large that it is only run when it is asked for twice.
    pub fn is_large(&self) -> bool {
        self.points > MOST_POINTS || self.seconds > MOST_SECONDS
    }
}
