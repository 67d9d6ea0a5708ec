//! Whether the alkalinity is enough for the microbes to finish.

use crate::base::clock::DAY;
use crate::base::units::MEQ_PER_DKH;
use crate::engine::result::RunResult;

use super::milestones::Extreme;
use super::ready::{Ready, Verdict};

/// Below this share of full speed, nitrite oxidisers are called stuck (a judgement, no source:
/// at a quarter of their speed they hardly outgrow their decay).
pub const STUCK_FRAC: f64 = 0.25;

/// What alkalinity does to the start-up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Alkalinity {
    /// Lowest KH, dKH.
    pub lowest_dkh: Extreme,
    /// Lowest share of full speed that pH, carbon and inhibition leave the nitrite oxidisers.
    pub slowest: Extreme,
    /// Their mean share of full speed in the last seven days, 0 to 1.
    pub speed_at_end_frac: f64,
    /// Whether it is enough: the tank gets quiet within the run, or its microbes are not stuck at
    /// the end.
    pub enough: bool,
}

/// Judges the run without animals.
pub fn judge(quiet: &RunResult, verdict: &Verdict) -> Option<Alkalinity> {
    let shown = quiet.shown();
    let end = quiet.input.end_minute();
    let from = shown.partition_point(|r| r.minute < end.saturating_sub(7 * DAY));
    let last_week = &shown[from..];
    let sum: f64 = last_week
        .iter()
        .map(|r| r.nitrite_oxidiser_speed_frac)
        .sum();
    let speed_at_end_frac = sum / last_week.len() as f64;
    Some(Alkalinity {
        lowest_dkh: Extreme::lowest(shown, |r| r.alkalinity_meq_per_l / MEQ_PER_DKH)?,
        slowest: Extreme::lowest(shown, |r| r.nitrite_oxidiser_speed_frac)?,
        speed_at_end_frac,
        enough: !matches!(verdict.ready, Ready::LaterThan(_)) || speed_at_end_frac >= STUCK_FRAC,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::analysis::ready;

    #[test]
    fn a_tank_that_is_not_ready_and_stands_still_lacks_alkalinity() {
        let example = Example {
            clean_from_day: 99,
            ..Example::default()
        };
        let mut run = example.run();
        let verdict = ready::judge(&run, &example.case());
        assert!(
            judge(&run, &verdict).unwrap().enough,
            "half speed is slow, not stuck"
        );
        for reading in &mut run.readings {
            reading.nitrite_oxidiser_speed_frac = 0.1;
        }
        assert!(!judge(&run, &verdict).unwrap().enough);
    }
}
