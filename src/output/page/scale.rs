//! From days and values to places on a plot of 1000 by 400, and paths of them.

use std::fmt::Write as _;

use crate::base::clock::days;

/// Width and height of a plot in its own units; the browser stretches it.
pub const WIDE: f64 = 1000.0;
/// See [`WIDE`].
pub const HIGH: f64 = 400.0;

/// A plot's axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    /// First and last moment, days.
    pub across: (f64, f64),
    /// Lowest and highest value.
    pub up: (f64, f64),
}

impl Scale {
    /// Place of a moment.
    pub fn x(&self, day: f64) -> f64 {
        WIDE * (day - self.across.0) / (self.across.1 - self.across.0)
    }
    /// Place of a value, from the top.
    pub fn y(&self, value: f64) -> f64 {
        HIGH * (self.up.1 - value) / (self.up.1 - self.up.0)
    }
    /// A curve as the commands of a path, in tenths.
    pub fn path(&self, minutes: &[u32], values: &[f64]) -> String {
        let mut d = String::new();
        for (at, (&minute, &value)) in minutes.iter().zip(values).enumerate() {
            let letter = if at == 0 { 'M' } else { 'L' };
            let (x, y) = (self.x(days(minute)), self.y(value));
            // writing to a text cannot fail
            let _ = write!(d, "{letter}{x:.1} {y:.1}");
        }
        d
    }
}

/// A place in percent of the plot.
pub fn percent(place: f64, of: f64) -> String {
    format!("{:.2}%", 100.0 * place / of)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_moment_stands_left_and_the_highest_value_on_top() {
        let scale = Scale {
            across: (0.0, 10.0),
            up: (0.0, 4.0),
        };
        assert_eq!(
            scale.path(&[0, 7200, 14400], &[4.0, 1.0, 0.0]),
            "M0.0 0.0L500.0 300.0L1000.0 400.0"
        );
    }
}
