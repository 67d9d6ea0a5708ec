//! The latest filling date by which so many of 100 plausible tanks are ready in time.
//!
//! A filling that is put off takes its day numbers along; weekdays and dates stay where they are. So the plan
//! of a later filling is the same again, or it is another one, which has to be run.

use crate::base::stop::Stop;
use crate::engine::alike::alike;
use crate::engine::input::ModelInput;

use super::case::Case;
use super::ensemble::EnsembleError;
use super::ensemble::curve::ReadyCurve;
use super::levers::Trying;
use super::levers::trials::Trials;

/// What is wished for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wish {
    /// Days from the planned filling to the day by which tanks are to be ready.
    pub ready_by_day: u32,
    /// So many of 100 plausible tanks.
    pub of_100: usize,
    /// On which members.
    pub trying: Trying,
}

/// A filling and what comes of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fill {
    /// Days after the planned filling.
    pub put_off_days: u32,
    /// How many of 100 are ready in time.
    pub of_100: f64,
}

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub struct LatestFill {
    /// The latest filling that does; none when none does.
    pub latest: Option<Fill>,
    /// Where none does: the filling with most tanks ready in time, the latest of several; else the same as
    /// the latest that does.
    pub best: Fill,
    /// Distinct plans that were run.
    pub plans: usize,
    /// Fillings that are not possible, because something is planned for a date before them.
    pub impossible: usize,
}

/// Looks from the latest day on backwards, never before the planned filling. `case_of` gives the scenario with
/// its filling put off; `progress` hears how many filling days are done, of how many at most.
///
/// # Errors
/// When somebody wishes to stop, or too many members of a plan fail.
pub fn latest_fill(
    wish: Wish,
    case_of: impl Fn(u32) -> Option<Case>,
    stop: &Stop,
    mut progress: impl FnMut(usize, usize),
) -> Result<LatestFill, EnsembleError> {
    let mut plans = Plans::default();
    let none = Fill {
        put_off_days: 0,
        of_100: 0.0,
    };
    let mut answer = LatestFill {
        latest: None,
        best: none,
        plans: 0,
        impossible: 0,
    };
    for (done, put_off_days) in (0..=wish.ready_by_day).rev().enumerate() {
        let Some(case) = case_of(put_off_days) else {
            answer.impossible += 1;
            continue;
        };
        let curve = plans.curve(&case, wish.trying, stop)?;
        let days = wish.ready_by_day - put_off_days;
        let of_100 = curve.of_100_by(days);
        let fill = Fill {
            put_off_days,
            of_100,
        };
        if of_100 > answer.best.of_100 || answer.plans == 0 {
            answer.best = fill;
        }
        answer.plans = plans.run.len();
        progress(done + 1, wish.ready_by_day as usize + 1);
        if curve.day_of(wish.of_100).is_some_and(|day| day <= days) {
            (answer.latest, answer.best) = (Some(fill), fill);
            break;
        }
    }
    Ok(answer)
}

/// Plans that have been run.
#[derive(Default)]
struct Plans {
    run: Vec<(ModelInput, ReadyCurve)>,
}

impl Plans {
    /// When the tanks of a plan are ready: from memory, if one with its times and switches was run.
    fn curve(
        &mut self,
        case: &Case,
        trying: Trying,
        stop: &Stop,
    ) -> Result<ReadyCurve, EnsembleError> {
        let same = |input: &ModelInput| alike(&[input, &case.input]).is_ok();
        if let Some((_, curve)) = self.run.iter().find(|(input, _)| same(input)) {
            return Ok(curve.clone());
        }
        let trials = Trials::of(case, trying.seed, stop);
        let members = trials.plan(trying.members, &mut || {})?;
        let curve = ReadyCurve::of(&members, case.input.last_day);
        self.run.push((case.input.clone(), curve.clone()));
        Ok(curve)
    }
}
