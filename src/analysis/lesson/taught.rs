//! A lesson that has been run: every step on the same plausible tanks, with its curves and its claims.

use thiserror::Error;

use crate::analysis::case::Case;
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::compare::{Common, CompareError, Entrant};
use crate::base::clock::DAY;
use crate::base::stop::Stop;

use super::Lesson;
use super::claim::{Decided, Unsupported};
use super::course::Course;
use super::fact::Seen;
use super::trace::Trace;

/// How many plausible tanks each step is run on: means of pairs to half a day (measured on early changes).
pub const MEMBERS: usize = 48;

/// A lesson that has been run.
#[derive(Debug)]
pub struct Taught<'a> {
    /// The lesson.
    pub lesson: &'static Lesson,
    /// The plausible tanks.
    pub common: Common,
    /// Its steps.
    pub steps: Vec<Strategy<'a>>,
    /// What is drawn of each.
    pub courses: Vec<Course>,
}

/// Why a lesson cannot be told.
#[derive(Debug, Error)]
pub enum LessonError {
    /// A step could not be run.
    #[error(transparent)]
    Run(#[from] CompareError),
    /// The numbers support no sentence.
    #[error(transparent)]
    Unsupported(#[from] Unsupported),
}

impl Lesson {
    /// The curves it draws, panel by panel.
    pub fn traces(&self) -> Vec<Trace> {
        let panels = self.panels.iter();
        panels.flat_map(|panel| panel.traces).copied().collect()
    }
}

impl<'a> Taught<'a> {
    /// Runs a lesson: one case per step; `done` hears how many runs are done, of how many.
    ///
    /// # Errors
    /// When a step cannot be run, or its numbers support no sentence of a claim.
    pub fn of(
        lesson: &'static Lesson,
        cases: &'a [Case],
        common: Common,
        stop: &Stop,
        mut done: impl FnMut(usize, usize),
    ) -> Result<Taught<'a>, LessonError> {
        let all = cases.len() * common.members;
        let mut steps = Vec::new();
        for (step, case) in lesson.steps.iter().zip(cases) {
            let entrant = Entrant {
                key: step.key.into(),
                case,
            };
            let before = steps.len() * common.members;
            let mut heard = |so_far: usize| done(before + so_far, all);
            steps.push(Strategy::of(&entrant, common, stop, &mut heard)?);
        }
        let traces = lesson.traces();
        let course = |step: &Strategy<'a>| Course::of(step, &traces, lesson.window);
        let taught = Taught {
            lesson,
            common,
            courses: steps.iter().map(course).collect(),
            steps,
        };
        for step in 0..taught.steps.len() {
            taught.headline(step)?;
            taught.claims(step)?;
        }
        Ok(taught)
    }
    /// One step beside the one others are held against.
    pub fn seen(&self, step: usize) -> Seen<'_> {
        Seen {
            step: &self.steps[step],
            base: &self.steps[self.lesson.base],
            day: self.lesson.day,
        }
    }
    /// The result at a step.
    ///
    /// # Errors
    /// When the numbers support no variant of it.
    pub fn headline(&self, step: usize) -> Result<Decided, Unsupported> {
        self.lesson.headline.decide(&self.seen(step))
    }
    /// What the runs show at a step.
    ///
    /// # Errors
    /// When the numbers support no variant of a claim.
    pub fn claims(&self, step: usize) -> Result<Vec<Decided>, Unsupported> {
        let seen = self.seen(step);
        let claims = self.lesson.claims.iter();
        claims.map(|claim| claim.decide(&seen)).collect()
    }
    /// Whether water is changed at any step.
    pub fn has_changes(&self) -> bool {
        let litres = |step: &Strategy<'_>| step.outcome.milestones.litres_changed;
        self.steps.iter().any(|step| litres(step) > 0.0)
    }
    /// The minute that opens the day that is looked at closely.
    pub fn that_minute(&self) -> u32 {
        self.lesson.day * DAY
    }
}
