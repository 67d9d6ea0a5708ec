//! A scenario run and judged: everything that is said, drawn and written about it.

use crate::engine::close_ups::CloseUps;
use crate::engine::error::RunError;
use crate::engine::plan::Plan;
use crate::engine::result::RunResult;
use crate::engine::run;

use super::alkalinity::{self, Alkalinity};
use super::arrivals::{self, Arrival};
use super::branch::Noons;
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
    /// The ready day: judged without animals, then with the planned ones put in.
    pub verdict: Verdict,
    /// Whether the alkalinity is enough, judged without animals.
    pub alkalinity: Option<Alkalinity>,
    /// Running limits of the run as planned.
    pub findings: Vec<Finding>,
    /// Animals that go in.
    pub arrivals: Vec<Arrival>,
}

impl Outcome {
    /// Runs a scenario, and once more without animals if it has any; then the animals are put in on the
    /// first days that would do.
    ///
    /// # Errors
    /// The first impossible number of either run.
    pub fn of(case: &Case) -> Result<Outcome, RunError> {
        if !case.input.has_animals() {
            return Ok(Outcome::judged(case, run::run(&case.input)?, None));
        }
        let (run, quiet) = rayon::join(|| run::run(&case.input), || without_animals(case));
        let (quiet, verdict) = quiet?;
        Ok(Outcome::with(case, run?, Some(&quiet), verdict))
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

    /// Judges a run of its own by its twin without animals; without such a twin, by itself. Nothing is
    /// stocked.
    pub fn judged(case: &Case, run: RunResult, quiet: Option<&RunResult>) -> Outcome {
        let verdict = ready::judge(quiet.unwrap_or(&run), case);
        Outcome::with(case, run, quiet, verdict)
    }

    fn with(case: &Case, run: RunResult, quiet: Option<&RunResult>, verdict: Verdict) -> Outcome {
        let quiet = quiet.unwrap_or(&run);
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

/// The run without animals, and the ready day that branches of it with animals show.
fn without_animals(case: &Case) -> Result<(RunResult, Verdict), RunError> {
    let plan = Plan::new(&case.input.without_animals());
    let mut noons = Noons::default();
    let quiet = run::run_beside(&plan, &CloseUps::none(), Some(&mut noons))?;
    let verdict = ready::judge_with_animals(&quiet, case, (&plan, &noons))?;
    Ok((quiet, verdict))
}
