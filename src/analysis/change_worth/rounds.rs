//! Round after round on the same tanks: altered plans against the plan as written.

use crate::analysis::case::Case;
use crate::analysis::compare::Common;
use crate::analysis::ensemble::EnsembleError;
use crate::analysis::ensemble::member::Member;
use crate::analysis::levers::lever::Lever;
use crate::analysis::levers::trials::Trials;
use crate::base::stop::Stop;

use super::effects::Effects;

/// Hears how many runs are done, of how many as far as is known.
pub type Progress<'a> = &'a mut dyn FnMut(usize, usize);

/// The tanks, the plan run on them, and how far the work is.
pub struct Rounds<'a, 'p> {
    /// The plan.
    pub case: &'a Case,
    /// The plausible tanks.
    pub common: Common,
    /// Its members.
    pub plan: Vec<Member>,
    trials: Trials<'a>,
    progress: Progress<'p>,
    done: usize,
    expected: usize,
}

impl<'a, 'p> Rounds<'a, 'p> {
    /// Runs the plan as written.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn new(
        case: &'a Case,
        common: Common,
        stop: &'a Stop,
        progress: Progress<'p>,
    ) -> Result<Self, EnsembleError> {
        let mut rounds = Rounds {
            case,
            common,
            plan: Vec::new(),
            trials: Trials::of(case, common.seed, stop),
            progress,
            done: 0,
            expected: common.members,
        };
        let unchanged = [Lever::of("plan", "the plan as written", |_| {})];
        let mut plan = Vec::new();
        rounds.run(&unchanged, common.members, |_, members| plan = members)?;
        rounds.plan = plan;
        Ok(rounds)
    }
    /// So many more runs are to come.
    pub fn expect(&mut self, runs: usize) {
        self.expected += runs;
    }
    /// Runs each altered plan on the first members, and hands them over; what is kept of them is the caller's.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn run(
        &mut self,
        altered: &[Lever],
        members: usize,
        take: impl FnMut(usize, Vec<Member>),
    ) -> Result<(), EnsembleError> {
        let (count, expected, progress) = (&mut self.done, self.expected, &mut self.progress);
        let mut done = || {
            *count += 1;
            progress(*count, expected.max(*count));
        };
        self.trials.with_each(altered, members, &mut done, take)
    }
    /// What each altered plan does to the first members.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn effects(
        &mut self,
        altered: &[Lever],
        members: usize,
    ) -> Result<Vec<Effects>, EnsembleError> {
        let plan = std::mem::take(&mut self.plan);
        let last_day = self.case.input.last_day;
        let mut effects = Vec::with_capacity(altered.len());
        let ran = self.run(altered, members, |_, altered| {
            effects.push(Effects::of(&plan, &altered, last_day));
        });
        self.plan = plan;
        ran.map(|()| effects)
    }
    /// What one altered plan does to all members.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn effect(&mut self, altered: Lever) -> Result<Effects, EnsembleError> {
        let members = self.common.members;
        let mut effects = self.effects(&[altered], members)?;
        Ok(effects.remove(0))
    }
}
