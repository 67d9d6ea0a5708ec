//! Many plausible tanks of one scenario: what comes of each, and the bands they span.
//!
//! Start at [`run`]. What is varied is the caller's: a closure gives the input of each member. A member's
//! result hangs on that input alone, not on its neighbours, their number or the threads.

pub mod bands;
pub mod confirm;
pub mod curve;
pub mod days;
mod group;
pub mod member;
pub mod next_test;
mod planned;
pub mod plans;
mod quiet;
pub mod soil;
mod stocked;

use thiserror::Error;

use crate::base::clock::DAY;
use crate::base::stop::{Stop, Stopped};
use crate::engine::error::RunError;
use crate::engine::input::ModelInput;
use crate::engine::many::in_batches;

use super::case::Case;
use bands::{Bands, Gathered};
use group::{Group, Underway};
use member::Member;
pub use quiet::TEST_MINUTE;

/// More failed members than this share of all make the whole a failure (a judgement, no source).
pub const MOST_FAILED_FRAC: f64 = 0.05;

/// What is asked of many plausible tanks.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// The scenario: its limits, and the length of its run.
    pub case: &'a Case,
    /// How many members.
    pub members: usize,
    /// Days whose bands are wanted by the hour.
    pub drawn_days: &'a [u32],
}

/// What came of many plausible tanks.
#[derive(Debug, Clone, PartialEq)]
pub struct Ensemble {
    /// Every member in order, failed ones too.
    pub members: Vec<Member>,
    /// The bands of those that did not fail.
    pub bands: Bands,
}

/// Why there is no result.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum EnsembleError {
    /// Somebody wished to stop.
    #[error(transparent)]
    Stopped(#[from] Stopped),
    /// Too many members failed to say anything of the rest.
    #[error("{failed} of {members} members failed, the first (member {first}) with: {why}")]
    TooManyFailed {
        /// How many failed.
        failed: usize,
        /// Of how many.
        members: usize,
        /// The number of the first that failed.
        first: usize,
        /// Why it failed.
        why: RunError,
    },
}

/// Runs the members on the threads of the present pool of `rayon`. `input` gives the input of a member, which
/// must be that of the case but for numbers; `progress` hears how many are done, of how many.
///
/// # Errors
/// When somebody wishes to stop, or more than [`MOST_FAILED_FRAC`] of the members fail.
pub fn run(
    ask: Ask<'_>,
    input: impl Fn(usize) -> ModelInput + Sync,
    stop: &Stop,
    mut progress: impl FnMut(usize, usize),
) -> Result<Ensemble, EnsembleError> {
    let (count, plan) = (ask.members, &ask.case.input);
    let group = Group {
        limits: &ask.case.limits,
        drawn: ask.drawn_days,
    };
    let run_group = |numbers: &[usize]| {
        let inputs: Vec<ModelInput> = numbers.iter().map(|&number| input(number)).collect();
        group.run(&inputs)
    };
    let mut members = Vec::with_capacity(count);
    let mut gathered = Gathered::new(plan.filled_at / DAY, plan.last_day, ask.drawn_days);
    let settle = |batch: &mut [Underway]| stocked::settle(batch, &ask.case.limits, stop);
    in_batches(count, (run_group, settle), stop, |number, one| {
        let told = one.ran.map(|(told, days)| {
            gathered.take(days);
            told
        });
        members.push(Member { number, told });
        progress(number + 1, count);
    })?;
    refuse_too_many_failed(&members)?;
    Ok(Ensemble {
        members,
        bands: gathered.bands(),
    })
}

fn refuse_too_many_failed(members: &[Member]) -> Result<(), EnsembleError> {
    let failed = members.iter().filter(|member| member.told.is_err()).count();
    if failed as f64 <= MOST_FAILED_FRAC * members.len() as f64 {
        return Ok(());
    }
    let first = members.iter().find_map(|member| {
        let why = member.told.as_ref().err()?;
        Some((member.number, why.clone()))
    });
    let (first, why) = first.expect("some have failed");
    Err(EnsembleError::TooManyFailed {
        failed,
        members: members.len(),
        first,
        why,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::analysis::limits::Limits;
    use crate::analysis::milestones::figures;
    use member::{Evenings, MemberReady, Told};

    /// A member that tells of a ready day, and for the rest of the made-up run.
    pub(super) fn told(ready: MemberReady) -> Told {
        Told {
            figures: figures(&Example::default().run(), &Limits::default()),
            ready,
            evenings: Evenings::default(),
        }
    }
}
