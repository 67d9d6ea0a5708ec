//! Parameters: each declared once, with unit, default, range and source.

use crate::base::sources::Source;

/// Everything there is to say about one parameter.
#[derive(Debug, Clone, Copy)]
pub struct ParameterSpec {
    /// The symbol used in the literature; the name in `[parameters]` of a scenario.
    pub id: &'static str,
    /// What it is, in words.
    pub meaning: &'static str,
    /// Unit as written in a scenario; `"1"` for a plain number.
    pub unit: &'static str,
    /// Value used when nothing else is said.
    pub default: f64,
    /// Low end of the range in which the value is plausible.
    pub low: f64,
    /// High end of that range.
    pub high: f64,
    /// Where the numbers come from.
    pub source: Source,
}

/// Declares a parameter.
pub const fn parameter(
    id: &'static str,
    meaning: &'static str,
    unit: &'static str,
    default: f64,
    range: (f64, f64),
    source: Source,
) -> ParameterSpec {
    ParameterSpec {
        id,
        meaning,
        unit,
        default,
        low: range.0,
        high: range.1,
        source,
    }
}

impl ParameterSpec {
    /// Whether the value is a share, bounded by 0 and 1 by nature.
    pub fn is_share(&self) -> bool {
        self.unit == "1" && self.low >= 0.0 && self.high <= 1.0
    }
    /// Whether a value is possible at all (finite, of the right sign, no share above one).
    pub fn allows(&self, value: f64) -> bool {
        let floor = if self.low < 0.0 {
            f64::NEG_INFINITY
        } else {
            0.0
        };
        value.is_finite() && value >= floor && !(self.is_share() && value > 1.0)
    }
}
