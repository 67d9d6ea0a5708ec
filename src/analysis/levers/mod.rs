//! What a keeper could do otherwise, each alone, and what it does to the ready day of the same plausible tanks.
//!
//! Start at [`Levers::of`]. A lever changes the input of a run once all that is uncertain has been drawn
//! (`lever`), so that a pair of runs differs in it alone; the list is [`all`]. One that cannot be pulled in a
//! scenario is left out: no gas, no hours of gas.

mod air;
mod bisect;
mod changes;
mod gas;
mod ground;
mod last_gain;
pub mod lever;
mod light;
pub mod paired;
mod plants;
pub mod price;
mod seeding;
pub mod shortest_air;
pub mod trials;
mod water;
mod windows;

use crate::base::stop::Stop;

use super::case::Case;
use super::ensemble::EnsembleError;
use super::ensemble::curve::ReadyCurve;
use super::ensemble::member::Member;
use super::forecast::USUAL_SEED;
use lever::Lever;
use paired::Paired;
use price::Price;
use shortest_air::ShortestAir;
use trials::Trials;

/// How many members levers are tried on when nothing else is said.
pub const USUAL_MEMBERS: usize = 128;
/// A lever that moves the ready day by less is said to do nothing, days.
pub const NOTHING_DAYS: f64 = 0.5;

/// How levers are to be tried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Trying {
    /// On how many plausible tanks.
    pub members: usize,
    /// Where chance begins: the same seed gives the same tanks.
    pub seed: u64,
}

impl Default for Trying {
    fn default() -> Self {
        Trying {
            members: USUAL_MEMBERS,
            seed: USUAL_SEED,
        }
    }
}

/// What the levers of a plan do.
#[derive(Debug, Clone, PartialEq)]
pub struct Levers {
    /// How they were tried.
    pub trying: Trying,
    /// The plan as written.
    pub plan: Price,
    /// How many are ready by when with the plan as written, and what they wait for.
    pub curve: ReadyCurve,
    /// The levers, the one that gains most first.
    pub pulled: Vec<Pulled>,
    /// The last day on which mature medium gains something; none when it gains nothing on any.
    pub last_day_to_seed: Option<u32>,
    /// The shortest nightly air that keeps oxygen over its limit; none in a tank without light.
    pub shortest_air: Option<ShortestAir>,
}

/// What one lever does.
#[derive(Debug, Clone, PartialEq)]
pub struct Pulled {
    /// Its name in tables.
    pub key: &'static str,
    /// In words.
    pub words: String,
    /// What it does to the ready day.
    pub paired: Paired,
    /// What it takes.
    pub price: Price,
}

impl Pulled {
    /// Whether the ready day moves by half a day at least.
    pub fn does_something(&self) -> bool {
        self.paired.mean_days.abs() >= NOTHING_DAYS
    }
}

/// Levers that bring the ready day nearer beyond chance, the best first.
pub fn best(pulled: &[Pulled]) -> impl DoubleEndedIterator<Item = &Pulled> {
    clear(pulled).filter(|pulled| pulled.paired.mean_days > 0.0)
}

/// Levers that put the ready day off beyond chance, the worst last.
pub fn worst(pulled: &[Pulled]) -> impl DoubleEndedIterator<Item = &Pulled> {
    clear(pulled).filter(|pulled| pulled.paired.mean_days < 0.0)
}

fn clear(pulled: &[Pulled]) -> impl DoubleEndedIterator<Item = &Pulled> {
    let clear = |pulled: &&Pulled| pulled.does_something() && pulled.paired.is_clear();
    pulled.iter().filter(clear)
}

/// Every lever that can be pulled in a case.
pub fn all(case: &Case) -> Vec<Lever> {
    let input = &case.input;
    let mut all = changes::levers(input);
    all.extend(water::levers(input));
    all.extend(seeding::levers(input));
    all.extend(air::levers(input));
    all.extend(gas::levers(input));
    all.extend(light::levers(input));
    all.extend(plants::levers(input));
    all.extend(ground::levers(input, case.soil_bag_l));
    all
}

/// The levers alone, ranked: what [`Levers::of`] does without looking for a window of air or a day of seeding.
///
/// # Errors
/// When somebody wishes to stop, or too many members fail.
pub fn ranked(case: &Case, trying: Trying, stop: &Stop) -> Result<Vec<Pulled>, EnsembleError> {
    let trials = Trials::of_levers(case, trying.seed, stop);
    Ok(pull_all(&trials, trying.members, &mut || {})?.1)
}

impl Levers {
    /// Tries every lever of a case; `progress` hears how many runs are done, of how many at most.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        case: &Case,
        trying: Trying,
        stop: &Stop,
        mut progress: impl FnMut(usize, usize),
    ) -> Result<Levers, EnsembleError> {
        let trials = Trials::of_levers(case, trying.seed, stop);
        let members = trying.members;
        let in_all = runs(case, trying)
            + last_gain::runs(&trials, members)
            + shortest_air::runs(&trials, members);
        let mut count = 0;
        let mut done = || {
            count += 1;
            progress(count, in_all);
        };
        let (as_planned, pulled) = pull_all(&trials, trying.members, &mut done)?;
        Ok(Levers {
            trying,
            plan: Price::of(&as_planned),
            curve: ReadyCurve::of(&as_planned, case.input.last_day),
            pulled,
            last_day_to_seed: last_gain::last_day_that_gains(&trials, members, &mut done)?,
            shortest_air: shortest_air::shortest_air(&trials, &as_planned, &mut done)?,
        })
    }
}

/// How many runs the levers of a case take.
pub fn runs(case: &Case, trying: Trying) -> usize {
    (1 + all(case).len()) * trying.members
}

/// Members of the plan as written, and what each lever does to them, the one that gains most first.
fn pull_all(
    trials: &Trials,
    members: usize,
    done: trials::Progress<'_>,
) -> Result<(Vec<Member>, Vec<Pulled>), EnsembleError> {
    let plan = trials.plan(members, done)?;
    let mut pulled = Vec::new();
    for lever in all(trials.case) {
        let with = trials.with(&lever, members, done)?;
        pulled.push(Pulled {
            key: lever.key,
            paired: Paired::of(&plan, &with, trials.case.input.last_day),
            price: Price::of(&with),
            words: lever.words,
        });
    }
    pulled.sort_by(|a, b| b.paired.mean_days.total_cmp(&a.paired.mean_days));
    Ok((plan, pulled))
}
