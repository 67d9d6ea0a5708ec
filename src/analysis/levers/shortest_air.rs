//! The shortest nightly air that keeps oxygen over its limit, and the gas it costs.

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::Member;
use crate::base::clock::HOUR;

use super::air::{for_minutes, up_to_dawn};
use super::bisect::{first_that_holds, most_trials};
use super::price::Price;
use super::trials::{Progress, Trials};

/// Windows are tried in steps of half an hour.
const STEP_MINUTES: u32 = HOUR / 2;
/// In so many of 100 plausible tanks oxygen must stay over its limit.
pub const KEPT_OF_100: f64 = 90.0;

/// The shortest nightly air that keeps oxygen over its limit in [`KEPT_OF_100`] tanks: from where it begins in
/// the plan; where none is planned, up to lights-on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShortestAir {
    /// Whether air is planned, which keeps its beginning.
    pub is_planned: bool,
    /// Minutes of air a night; none when the longest that was tried, up to lights-on, does not do.
    pub minutes: Option<u32>,
    /// Minutes of the longest that was tried.
    pub longest_minutes: u32,
    /// In how many of 100 oxygen stays over its limit with it (with the longest, where that does not do).
    pub kept_of_100: f64,
    /// Gas with it, g; mean.
    pub gas_g: f64,
    /// Gas of the same members as planned, g; mean.
    pub gas_planned_g: f64,
}

/// Half hours of the longest that is tried; none without light.
fn windows(trials: &Trials) -> Option<u32> {
    Some(up_to_dawn(&trials.case.input)? / STEP_MINUTES)
}

/// How many members will be run at most.
pub fn runs(trials: &Trials, members: usize) -> usize {
    windows(trials).map_or(0, |longest| (most_trials(longest) + 1) * members)
}

/// Looks for it on the members of the plan that are given; none in a tank without light, which has no dawn.
///
/// # Errors
/// When somebody wishes to stop, or too many members fail.
pub fn shortest_air(
    trials: &Trials,
    plan: &[Member],
    done: Progress<'_>,
) -> Result<Option<ShortestAir>, EnsembleError> {
    let Some(longest) = windows(trials) else {
        return Ok(None);
    };
    let mut with = |halves: u32| trials.with(&for_minutes(halves * STEP_MINUTES), plan.len(), done);
    let kept = |tanks: &[Member]| kept_of_100(tanks, trials.case.limits.oxygen.value);
    let mut keeps = |halves: u32| Ok(kept(&with(halves)?) >= KEPT_OF_100);
    let found = first_that_holds::<EnsembleError>(longest, &mut keeps)?;
    let tanks = with(found)?;
    let kept_of_100 = kept(&tanks);
    Ok(Some(ShortestAir {
        is_planned: !trials.case.input.air.is_empty(),
        minutes: (kept_of_100 >= KEPT_OF_100).then_some(found * STEP_MINUTES),
        longest_minutes: longest * STEP_MINUTES,
        kept_of_100,
        gas_g: Price::of(&tanks).gas_g,
        gas_planned_g: Price::of(plan).gas_g,
    }))
}

fn kept_of_100(tanks: &[Member], limit_mg_per_l: f64) -> f64 {
    let lows: Vec<f64> = tanks
        .iter()
        .filter_map(|member| Some(member.told.as_ref().ok()?.figures.oxygen_low.value))
        .collect();
    let kept = lows.iter().filter(|&&low| low >= limit_mg_per_l).count();
    100.0 * kept as f64 / lows.len().max(1) as f64
}
