//! The nitrogen of the planned feed, which a ripe tank must be able to oxidise.

use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;

/// Feed that stands in when none is planned, g per litre and day (common practice, no source:
/// 20 small fish of 0.3 g in 50 L, fed 2 % of their mass a day).
pub const STAND_IN_G_PER_L_DAY: f64 = 0.0024;
/// Protein share of the feed that stands in.
pub const STAND_IN_PROTEIN_FRAC: f64 = 0.40;

/// The feed a tank should be ripe for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Feed {
    /// All its nitrogen, mg N/day. Fish keep a part of it, so asking for all of it is cautious.
    pub mg_n_per_day: f64,
    /// Whether the scenario plans it; else the stand-in was taken.
    pub is_planned: bool,
}

/// The largest daily feed of the plan, or the stand-in.
///
/// ```text
/// nitrogen = feed (g/day) · protein share · N_feed (160 mg N per g protein)
/// ```
pub fn planned(input: &ModelInput) -> Feed {
    let n_feed = input.parameters.get("N_feed");
    let largest = largest_protein_g_per_day(input);
    if largest > 0.0 {
        return Feed {
            mg_n_per_day: largest * n_feed,
            is_planned: true,
        };
    }
    let stand_in_g = STAND_IN_G_PER_L_DAY * input.tank.volume_l;
    Feed {
        mg_n_per_day: stand_in_g * STAND_IN_PROTEIN_FRAC * n_feed,
        is_planned: false,
    }
}

/// Animals of later entries join those that are there, and so does their feed.
fn largest_protein_g_per_day(input: &ModelInput) -> f64 {
    let end = input.end_minute();
    input
        .events
        .iter()
        .filter(|event| event.minute < end)
        .map(|event| match &event.kind {
            EventKind::Stock(animals) => animals.feed_g_per_day * animals.protein_frac,
            _ => 0.0,
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;

    #[test]
    fn without_a_planned_feed_twenty_small_fish_stand_in() {
        let feed = planned(&Example::default().input());
        // 0.0024 g/L/day · 50 L · 40 % · 160 mg N/g = 7.68 mg N/day; 1e-9 covers rounding
        assert!((feed.mg_n_per_day - 7.68).abs() < 1e-9, "{feed:?}");
        assert!(!feed.is_planned);
    }

    #[test]
    fn feed_stocked_in_the_look_ahead_is_not_planned() {
        let late = Example {
            stocked: Some((12, 1.0)),
            ..Example::default()
        };
        assert!(!planned(&late.input()).is_planned);
    }
}
