//! The shortest nightly air that keeps oxygen over its limit, and the gas it costs.

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::Member;
use crate::base::clock::HOUR;
use crate::engine::input::ModelInput;

pub use super::air::Night;
pub use super::air::{USUAL_FLOW_L_PER_MIN, dark_window};
use super::bisect::{first_that_holds, most_trials};
use super::price::Price;
use super::trials::{Progress, Trials};

/// Windows are tried in steps of half an hour.
const STEP_MINUTES: u32 = HOUR / 2;
/// In so many of 100 plausible tanks oxygen must stay over its limit, at every hour of the run.
pub const KEPT_OF_100: f64 = 90.0;

/// The shortest nightly air that keeps oxygen over its limit in [`KEPT_OF_100`] tanks: from where it begins in the
/// plan; where none is planned, or where that does not do however long, up to lights-on.
///
/// The window is sought on the tanks that are told of. So that it holds on others too, a standard error more of them
/// must keep the limit, as far as longer air brings that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShortestAir {
    /// Where the night's air lies.
    pub night: Night,
    /// Minutes of air a night; none when the longest that was tried does not do.
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

/// Where windows are sought, in this order, and half hours of the longest; nowhere without light.
fn nights(input: &ModelInput) -> Vec<(Night, u32)> {
    let halves = |night: Night| Some((night, night.longest_minutes(input)? / STEP_MINUTES));
    let from_plan = halves(Night::FromPlan);
    let planned = from_plan.map_or(0, |(_, longest)| longest);
    // air that begins no earlier than planned does no better
    let up_to_dawn = halves(Night::UpToDawn).filter(|&(_, longest)| longest > planned);
    from_plan.into_iter().chain(up_to_dawn).collect()
}

/// How many members will be run at most.
pub fn runs(trials: &Trials, members: usize) -> usize {
    let nights = nights(&trials.case.input);
    let trials = nights.iter().map(|&(_, longest)| most_trials(longest) + 2);
    trials.sum::<usize>() * members
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
    let mut last = None;
    for (night, longest) in nights(&trials.case.input) {
        let mut with = |halves: u32| {
            let lever = night.for_minutes(halves * STEP_MINUTES);
            trials.with(&lever, plan.len(), done)
        };
        let kept = |tanks: &[Member]| kept_of_100(tanks, trials.case.limits.oxygen.value);
        let mut tanks = with(longest)?;
        let does = kept(&tanks) >= KEPT_OF_100;
        let mut found = longest;
        if does {
            let mut keeps = |halves: u32| Ok(kept(&with(halves)?) >= asked_of_100(plan.len()));
            found = first_that_holds::<EnsembleError>(longest, &mut keeps)?;
            tanks = with(found)?;
        }
        last = Some(ShortestAir {
            night,
            minutes: does.then_some(found * STEP_MINUTES),
            longest_minutes: longest * STEP_MINUTES,
            kept_of_100: kept(&tanks),
            gas_g: Price::of(&tanks).gas_g,
            gas_planned_g: Price::of(plan).gas_g,
        });
        if does {
            break;
        }
    }
    Ok(last)
}

/// Of 100 of so many members, how many must keep the limit: a standard error more than is promised.
fn asked_of_100(members: usize) -> f64 {
    let share = KEPT_OF_100 / 100.0;
    let variance = share * (1.0 - share) / members.max(1) as f64;
    (100.0 * (share + variance.sqrt())).min(100.0)
}

fn kept_of_100(tanks: &[Member], limit_mg_per_l: f64) -> f64 {
    let lows: Vec<f64> = tanks
        .iter()
        .filter_map(|member| Some(member.told.as_ref().ok()?.figures.oxygen_low.value))
        .collect();
    let kept = lows.iter().filter(|&&low| low >= limit_mg_per_l).count();
    100.0 * kept as f64 / lows.len().max(1) as f64
}
