//! Everything a user should know about a run, as values; the words are made in one place.

use std::fmt;

/// Something the user should know.
#[derive(Debug, Clone, PartialEq)]
pub enum Notice {
    /// Processes were slowed so that no pool fell below zero.
    HeldBack {
        /// Parts of steps in which that happened.
        parts: u64,
    },
    /// The valve cannot give the target.
    TargetOutOfReach {
        /// Day of the tuning.
        day: u32,
        /// Target, mg/L.
        target: f64,
        /// Nearest, mg/L.
        nearest: f64,
    },
    /// No start of the gas gives 90 % of the target at lights-on.
    NoStartReaches {
        /// Day of the tuning.
        day: u32,
        /// Concentration at lights-on with the earliest start, mg/L.
        at_lights_on: f64,
    },
    /// Said by a part above the engine.
    Said(String),
}

impl fmt::Display for Notice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Notice::HeldBack { parts } => write!(
                f,
                "in {parts} parts of steps processes were slowed so that nothing fell below zero; an extreme parameter is the usual cause"
            ),
            Notice::TargetOutOfReach {
                day,
                target,
                nearest,
            } if nearest > target => write!(
                f,
                "gas tuned on day {day}: CO2 is at {nearest:.1} mg/L, over the target of {target:.0}, even with the least gas; give no more, let it fall (air, ripple, shorter hours) and watch the animals"
            ),
            Notice::TargetOutOfReach {
                day,
                target,
                nearest,
            } => write!(
                f,
                "gas tuned on day {day}: {target:.0} mg/L CO2 is out of reach, the nearest is {nearest:.1}; lengthen the gas hours or lower the target"
            ),
            Notice::NoStartReaches { day, at_lights_on } => write!(
                f,
                "gas tuned on day {day}: no start gives 90 % of the target at lights-on (earliest start: {at_lights_on:.1} mg/L); calm the surface, end the night air earlier, or write the gas hours yourself"
            ),
            Notice::Said(words) => f.write_str(words),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nobody_is_told_to_give_more_gas_when_there_is_too_much() {
        let said = |nearest| {
            Notice::TargetOutOfReach {
                day: 3,
                target: 23.0,
                nearest,
            }
            .to_string()
        };
        assert!(!said(24.5).contains("lengthen") && said(24.5).contains("give no more"));
        assert!(said(18.0).contains("lengthen the gas hours"));
    }
}
