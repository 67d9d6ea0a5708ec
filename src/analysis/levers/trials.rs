//! The same plausible tanks, again and again, with one lever pulled or another.

use std::ops::Range;

use crate::analysis::case::Case;
use crate::analysis::ensemble::member::Member;
use crate::analysis::ensemble::plans::run_plans;
use crate::analysis::ensemble::{self, Ask, EnsembleError};
use crate::analysis::uncertain::Uncertain;
use crate::base::stop::Stop;
use crate::engine::input::ModelInput;

use super::lever::Lever;

/// The members that levers are tried on.
pub struct Trials<'a> {
    /// The plan as written.
    pub case: &'a Case,
    /// Where chance begins.
    pub seed: u64,
    uncertain: Uncertain,
    stop: &'a Stop,
}

/// Hears that one more member is done.
pub type Progress<'a> = &'a mut dyn FnMut();

impl<'a> Trials<'a> {
    /// Trials on the plausible tanks of a case.
    pub fn of(case: &'a Case, seed: u64, stop: &'a Stop) -> Trials<'a> {
        Trials {
            case,
            seed,
            uncertain: Uncertain::of(case),
            stop,
        }
    }
    /// The same for levers that bring in what is not planned.
    pub fn of_levers(case: &'a Case, seed: u64, stop: &'a Stop) -> Trials<'a> {
        Trials {
            uncertain: Uncertain::with_what_levers_bring(case),
            ..Trials::of(case, seed, stop)
        }
    }
    /// A member of the plan as written.
    pub fn input(&self, member: usize) -> ModelInput {
        let drawn = self.uncertain.draw(self.seed, member);
        self.uncertain.input(self.case, &drawn)
    }
    /// So many members of the plan as written.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn plan(&self, members: usize, done: Progress<'_>) -> Result<Vec<Member>, EnsembleError> {
        self.run(members, |input| input, done)
    }
    /// So many members with a lever pulled.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn with(
        &self,
        lever: &Lever,
        members: usize,
        done: Progress<'_>,
    ) -> Result<Vec<Member>, EnsembleError> {
        self.run(members, |input| lever.pulled(input), done)
    }
    /// So many members with each of several levers pulled alone, as one piece of work; `take` gets the members of
    /// each lever in turn.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn with_each(
        &self,
        levers: &[Lever],
        members: usize,
        done: Progress<'_>,
        take: impl FnMut(usize, Vec<Member>),
    ) -> Result<(), EnsembleError> {
        let ask = Ask {
            case: self.case,
            members,
            drawn_days: &[],
        };
        let input = |lever: usize, member| levers[lever].pulled(self.input(member));
        run_plans(ask, levers.len(), input, self.stop, done, take)
    }

    /// Some members with something changed in each.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn some(
        &self,
        members: Range<usize>,
        change: impl Fn(ModelInput) -> ModelInput + Sync,
        done: Progress<'_>,
    ) -> Result<Vec<Member>, EnsembleError> {
        let ask = Ask {
            case: self.case,
            members: members.len(),
            drawn_days: &[],
        };
        let input = |number| change(self.input(members.start + number));
        Ok(ensemble::run(ask, input, self.stop, |_, _| done())?.members)
    }

    fn run(
        &self,
        members: usize,
        change: impl Fn(ModelInput) -> ModelInput + Sync,
        done: Progress<'_>,
    ) -> Result<Vec<Member>, EnsembleError> {
        self.some(0..members, change, done)
    }
}
