//! Axes: ranges rounded out to a nice step, so that nothing is ever cut off or pressed on a frame.

use crate::base::maths::{exp10, log10};

use super::words::number;

/// How values are spaced along an axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// Evenly.
    Even,
    /// Each factor of ten takes the same room.
    Decades,
}

/// A value named on an axis; without words it only gets a short line.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// The value.
    pub value: f64,
    /// Its name; empty for a short line only.
    pub words: String,
}

/// A range of values and how it is divided.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// The value at the start (left, or bottom).
    pub low: f64,
    /// The value at the end (right, or top). Smaller than `low` for an axis that runs down.
    pub high: f64,
    /// Spacing.
    pub scale: Scale,
    /// Named values.
    pub ticks: Vec<Tick>,
}

impl Axis {
    /// Where a value lies, 0 at the start and 1 at the end.
    pub fn place(&self, value: f64) -> f64 {
        match self.scale {
            Scale::Even => (value - self.low) / (self.high - self.low),
            Scale::Decades => {
                (log10(value) - log10(self.low)) / (log10(self.high) - log10(self.low))
            }
        }
    }
    /// Whether a value lies between the ends.
    pub fn holds(&self, value: f64) -> bool {
        let (least, most) = (self.low.min(self.high), self.low.max(self.high));
        // the last digit of a sum must not throw a value out
        let slack = 1e-9 * (most - least);
        least - slack <= value && value <= most + slack
    }
}

/// The nicest step (1, 2 or 5 times a power of ten) that divides a span into at most `most` parts.
fn nice_step(span: f64, most: usize) -> f64 {
    let rough = span / most as f64;
    let power = exp10(log10(rough).floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|times| times * power)
        .find(|step| *step >= rough * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

/// A value on an axis; zero is just `0`.
fn named(value: f64, digits: usize) -> String {
    number(value, if value == 0.0 { 0 } else { digits })
}

/// Digits after the point that show a step exactly.
fn digits_of(step: f64) -> usize {
    (-log10(step).floor()).max(0.0) as usize
}

/// An axis over all values from `low` to `high`, with at most `most` steps.
pub fn around(low: f64, high: f64, most: usize) -> Axis {
    let size = low.abs().max(high.abs());
    let span = if high - low > 1e-9 * size.max(1e-6) {
        high - low
    } else {
        (0.1 * size).max(1e-3)
    };
    let step = nice_step(span, most);
    let first = (low / step + 1e-9).floor();
    let last = (high / step - 1e-9).ceil().max(first + 1.0);
    let ticks = (0..=(last - first) as usize)
        .map(|n| (first + n as f64) * step)
        .map(|value| Tick {
            value,
            words: named(value, digits_of(step)),
        })
        .collect();
    Axis {
        low: first * step,
        high: last * step,
        scale: Scale::Even,
        ticks,
    }
}

/// Air above the highest value, as a share of the span, so that no curve runs along the frame.
const AIR: f64 = 0.02;

/// An axis over values that need no zero, with a little air at both ends.
pub fn about(low: f64, high: f64, most: usize) -> Axis {
    let air = AIR * (high - low);
    around(low - air, high + air, most)
}

/// An axis from zero, or from below where a value is negative; never shorter than `least` tall.
pub fn from_zero(values: impl IntoIterator<Item = f64>, least: f64, most: usize) -> Axis {
    let (low, high) = values
        .into_iter()
        .fold((0.0_f64, least), |(l, h), v| (l.min(v), h.max(v)));
    let air = AIR * (high - low);
    around(if low < 0.0 { low - air } else { 0.0 }, high + air, most)
}

/// An axis of whole decades over all values above zero, at most `most` decades tall; what lies
/// below the lowest is left for the caller to say.
pub fn decades(values: impl IntoIterator<Item = f64>, most: i32) -> Axis {
    let (low, high) = values
        .into_iter()
        .filter(|v| *v > 0.0)
        .fold((f64::INFINITY, 0.0_f64), |(l, h), v| (l.min(v), h.max(v)));
    let (low, high) = if high > 0.0 { (low, high) } else { (1.0, 10.0) };
    let top = (log10(high) - 1e-9).ceil() as i32;
    let bottom = ((log10(low) + 1e-9).floor() as i32).clamp(top - most, top - 1);
    let mut ticks = Vec::new();
    for power in bottom..=top {
        let value = exp10(f64::from(power));
        ticks.push(Tick {
            value,
            words: number(value, (-power).max(0) as usize),
        });
        if power < top {
            ticks.extend((2..10).map(|n| Tick {
                value: f64::from(n) * value,
                words: String::new(),
            }));
        }
    }
    Axis {
        low: exp10(f64::from(bottom)),
        high: exp10(f64::from(top)),
        scale: Scale::Decades,
        ticks,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(axis: &Axis) -> Vec<&str> {
        axis.ticks.iter().map(|t| t.words.as_str()).collect()
    }

    #[test]
    fn an_axis_is_rounded_out_to_a_nice_step() {
        let axis = around(0.0, 7.3, 4);
        assert_eq!(words(&axis), ["0", "2", "4", "6", "8"]);
        let axis = around(0.0, 0.093, 5);
        assert_eq!(words(&axis), ["0", "0.02", "0.04", "0.06", "0.08", "0.10"]);
    }

    #[test]
    fn an_axis_below_zero_keeps_zero_as_a_tick() {
        let axis = from_zero([-0.3, 2.1], 1.0, 5);
        assert!(axis.low <= -0.3 && axis.ticks.iter().any(|t| t.value == 0.0));
    }

    #[test]
    fn values_all_alike_still_have_an_axis() {
        for value in [0.0, 7.0, -2.0, 1e-12, 1e6] {
            let axis = around(value, value, 4);
            assert!(
                axis.high > axis.low && axis.holds(value),
                "{value}: {axis:?}"
            );
        }
    }

    #[test]
    fn decades_are_whole_and_every_tenth_is_named() {
        let axis = decades([0.4, 85.0, 0.0], 6);
        assert_eq!((axis.low, axis.high), (0.1, 100.0));
        let named: Vec<&str> = words(&axis).into_iter().filter(|w| !w.is_empty()).collect();
        assert_eq!(named, ["0.1", "1", "10", "100"]);
        // the middle decade of three starts at a third of the height
        assert!((axis.place(1.0) - 1.0 / 3.0).abs() < 1e-12);
    }
}
