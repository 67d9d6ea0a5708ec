//! A scenario run and judged: everything that is said, drawn and written about it.

use crate::engine::close_ups::CloseUps;
use crate::engine::error::RunError;
use crate::engine::result::RunResult;
use crate::engine::run;

use super::alkalinity::{self, Alkalinity};
use super::arrivals::{self, Arrival};
use super::case::Case;
use super::milestones::{self, Milestones};
use super::ready::{self, Verdict};
use super::running::{self, Finding};

/// A run and what it means.
#[derive(Debug, Clone)]
pub struct Outcome {
    /// The run as planned.
    pub run: RunResult,
    /// Its figures.
    pub milestones: Milestones,
    /// The ready day, judged without animals.
    pub verdict: Verdict,
    /// Whether the alkalinity is enough, judged without animals.
    pub alkalinity: Option<Alkalinity>,
    /// Running limits of the run as planned.
    pub findings: Vec<Finding>,
    /// Animals that go in.
    pub arrivals: Vec<Arrival>,
}

impl Outcome {
    /// Runs a scenario, and once more without animals if it has any.
    ///
    /// # Errors
    /// The first impossible number of either run.
    pub fn of(case: &Case) -> Result<Outcome, RunError> {
        let run = run::run(&case.input)?;
        let quiet = if case.input.has_animals() {
            Some(run::run(&case.input.without_animals())?)
        } else {
            None
        };
        Ok(Outcome::judged(case, run, quiet.as_ref()))
    }

    /// Looks closely at some times: the same run once more, with readings inside its steps.
    ///
    /// # Errors
    /// None that the run did not have before.
    pub fn look_closely(&mut self, case: &Case, closely: &CloseUps) -> Result<(), RunError> {
        if !closely.is_none() {
            self.run = run::run_closely(&case.input, closely)?;
        }
        Ok(())
    }

    /// Judges a run by its branch without animals; without such a branch, by itself.
    pub fn judged(case: &Case, run: RunResult, quiet: Option<&RunResult>) -> Outcome {
        let quiet = quiet.unwrap_or(&run);
        let verdict = ready::judge(quiet, case);
        Outcome {
            milestones: milestones::of(&run, case),
            alkalinity: alkalinity::judge(quiet, &verdict),
            findings: running::findings(&run, case),
            arrivals: arrivals::arrivals(&run, case, &verdict),
            verdict,
            run,
        }
    }
}
