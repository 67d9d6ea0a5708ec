//! The day after which mature medium gains nothing any more.

use crate::analysis::ensemble::EnsembleError;

use super::NOTHING_DAYS;
use super::bisect::{first_that_holds, most_trials};
use super::paired::Paired;
use super::seeding;
use super::trials::{Progress, Trials};

/// How many members will be run at most.
pub fn runs(trials: &Trials, members: usize) -> usize {
    (most_trials(trials.case.input.last_day + 1) + 1) * members
}

/// The last day on which the medium of the plan (a fist of sponge, where none is planned) gains at least half
/// a day against none at all; none when it does so on no day.
///
/// # Errors
/// When somebody wishes to stop, or too many members fail.
pub fn last_day_that_gains(
    trials: &Trials,
    members: usize,
    done: Progress<'_>,
) -> Result<Option<u32>, EnsembleError> {
    let input = &trials.case.input;
    let without = trials.with(&seeding::none(), members, done)?;
    let gains_nothing = |day: u32| {
        let lever = seeding::on_day(input, day, "sponge_on");
        let with = trials.with(&lever, members, done)?;
        let gained = Paired::of(&without, &with, input.last_day).mean_days;
        Ok::<bool, EnsembleError>(gained < NOTHING_DAYS)
    };
    let first = first_that_holds(input.last_day + 1, gains_nothing)?;
    Ok(first.checked_sub(1))
}
