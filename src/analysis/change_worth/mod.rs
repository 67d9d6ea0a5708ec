//! The worth of every single water change: each left out in turn on the same plausible tanks.
//!
//! Start at [`ChangeWorth::of`]. Plans are altered once all that is uncertain has been drawn, so a pair of runs
//! differs in the change alone.
//!
//! ```text
//! planned    the changes one by one; a plan without some, with more, with one doubled
//! effects    the ready day first, then each figure for itself; what counts as a loss
//! rounds     altered plans on the same tanks, against the plan as written
//! pairs      two within a week left out together: what both do beyond the sum
//! drop       what may go, run again together each time; where to stop
//! one_more   where one more change would help most
//! absence    what days away cost, a plan with less to do
//! doubling   the best day to double up
//! ```

pub mod absence;
pub mod doubling;
pub mod drop;
pub mod effects;
pub mod one_more;
pub mod pairs;
pub mod planned;
mod rounds;

use crate::base::stop::Stop;

use super::case::Case;
use super::compare::Common;
use super::ensemble::EnsembleError;
use super::ensemble::member::Member;
use super::levers::lever::Lever;
use super::levers::price::Price;
use absence::Absence;
use drop::DropList;
use effects::Effects;
use one_more::OneMore;
use pairs::Together;
use planned::{Change, planned, without};
use rounds::Rounds;

/// The worth of the changes of a plan.
#[derive(Debug, Clone)]
pub struct ChangeWorth {
    /// The plausible tanks.
    pub common: Common,
    /// The plan as written.
    pub plan: Price,
    /// Its changes, in order.
    pub changes: Vec<Change>,
    /// What leaving out each of them alone does.
    pub alone: Vec<Effects>,
    /// Two of them left out together.
    pub pairs: Vec<Together>,
    /// On how many tanks two were left out together.
    pub pair_members: usize,
    /// What may go.
    pub drop: DropList,
    /// Where one more would help; none where no day is free.
    pub one_more: Option<OneMore>,
    /// What days away cost; none without any.
    pub absence: Option<Absence>,
}

impl ChangeWorth {
    /// Ranks the changes of a case, which must have one; `progress` hears how many runs are done, of how many as
    /// far as is known.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members of a plan fail.
    pub fn of(
        case: &Case,
        common: Common,
        stop: &Stop,
        mut progress: impl FnMut(usize, usize),
    ) -> Result<ChangeWorth, EnsembleError> {
        let changes = planned(&case.input);
        let mut rounds = Rounds::new(case, common, stop, &mut progress)?;
        rounds.expect(runs_ahead(case, &changes, common));
        let (alone, few) = alone(&mut rounds, &changes)?;
        let pairs = pairs::together(&mut rounds, &changes, &few)?;
        let drop = DropList::of(&mut rounds, &changes, &alone)?;
        let one_more = OneMore::of(&mut rounds, &changes)?;
        let absence = Absence::of(&mut rounds, &changes, &drop)?;
        Ok(ChangeWorth {
            common,
            plan: Price::of(&rounds.plan),
            pair_members: pairs::MEMBERS.min(common.members),
            changes,
            alone,
            pairs,
            drop,
            one_more,
            absence,
        })
    }
}

/// Runs that are certain beforehand: each change left out, pairs, one more on each free day.
fn runs_ahead(case: &Case, changes: &[Change], common: Common) -> usize {
    let few = |most: usize| most.min(common.members);
    changes.len() * common.members
        + pairs::near(changes).len() * few(pairs::MEMBERS)
        + one_more::count(case, changes) * few(one_more::MEMBERS)
        + common.members
}

/// What leaving out each change alone does, without pairs or lists: the bare ranking.
///
/// # Errors
/// When somebody wishes to stop, or too many members fail.
pub fn each_alone(case: &Case, common: Common, stop: &Stop) -> Result<Vec<Effects>, EnsembleError> {
    let mut progress = |_, _| {};
    let mut rounds = Rounds::new(case, common, stop, &mut progress)?;
    Ok(alone(&mut rounds, &planned(&case.input))?.0)
}

/// What leaving out each change alone does, and the first members of each, for pairs.
fn alone(
    rounds: &mut Rounds<'_, '_>,
    changes: &[Change],
) -> Result<(Vec<Effects>, Vec<Vec<Member>>), EnsembleError> {
    let each: Vec<Lever> = changes.iter().map(|change| without(&[change])).collect();
    let (plan, members) = (rounds.plan.clone(), rounds.common.members);
    let last_day = rounds.case.input.last_day;
    let (mut effects, mut few) = (Vec::new(), Vec::new());
    rounds.run(&each, members, |_, mut out| {
        effects.push(Effects::of(&plan, &out, last_day));
        out.truncate(pairs::MEMBERS);
        few.push(out);
    })?;
    Ok((effects, few))
}
