//! The calendar of water changes that does with least: found by search, on many plausible tanks.
//!
//! Start at [`Found::of`]. What is allowed is a [`CalendarWish`]; what a calendar does is its [`Score`],
//! judged on common members ([`Judge`]); the search knows nothing of tanks (`search`). Choices are made on members that
//! no search has seen, and scored on others that no choice has seen either; only that is shown. The plan itself, as near as the
//! free days let it stand, is always one of those that are scored: where it is allowed, no choice does worse.

mod around;
mod beginnings;
pub mod broken;
pub mod choice;
mod choosing;
pub mod conflict;
pub mod days;
pub mod easing;
mod ended;
pub mod forbidden;
mod hopeless;
pub mod judge;
pub mod score;
pub mod search;
mod seen;
pub mod wish;

use crate::base::stop::Stop;
use crate::engine::input::ModelInput;

use super::case::Case;
use super::ensemble::EnsembleError;
use super::levers::trials::Trials;
use choice::Choice;
use choosing::{BEST_TRIED, nearest_of, offered, score_anew};
use conflict::Conflict;
use days::Days;
pub use ended::Ended;
use forbidden::Forbidden;
use judge::Judge;
use score::Score;
use seen::{NEAREST_TRIED, Seen};
use wish::{CalendarWish, Least, Terms, Trying, is_same_share};

/// What a search has found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// How it was asked.
    pub trying: Trying,
    /// What had to hold.
    pub terms: Terms,
    /// The changes of the file on the members that are shown: what the choices are held against.
    pub planned: Score,
    /// What of those changes the wish does not allow.
    pub forbidden: Forbidden,
    /// The choices, the one that does with least first; none where nothing holds.
    pub choices: Vec<Choice>,
    /// Why nothing holds, if so.
    pub conflict: Option<Conflict>,
    /// Calendars that were tried.
    pub tried: usize,
    /// How the search ended.
    pub ended: Ended,
}

impl Found {
    /// Looks for calendars. A wish to stop ends the search and keeps what it has found; `progress` hears how
    /// many runs are done, of how many at most.
    ///
    /// # Errors
    /// When somebody wishes to stop before anything is found, or too many members fail.
    pub fn of(
        case: &Case,
        wish: &CalendarWish,
        trying: Trying,
        stop: &Stop,
        mut progress: impl FnMut(usize, usize),
    ) -> Result<Found, EnsembleError> {
        let wish = &wish.clone().with_shares_of(&case.input);
        let trials = Trials::of(case, trying.seed, stop);
        let most = most_runs(trying);
        let mut done = 0;
        let mut count = || {
            done += 1;
            progress(done.min(most), most);
        };
        let members = trials.some(trying.shown(), |input| input, &mut count)?;
        let terms = Terms::of(wish, &members, case.input.last_day);
        let shown = Judge::on(trying.shown(), &trials, wish, terms, trying, &mut count);
        let planned = shown.score_of_planned(&members);
        let first = Days::planned(&case.input, wish);
        let mut judge = Judge::new(&trials, wish, terms, trying, &mut count);
        let seen = Seen::by(&mut judge, wish, (&first, &planned), trying)?;
        // once stopped, what is found is scored all the same
        let never = Stop::default();
        let anew = Trials::of(case, trying.seed, seen.ended.still(stop, &never));
        let mut choosing = Judge::on(trying.choosing(), &anew, wish, terms, trying, &mut count);
        let planned_there = choosing.as_planned()?;
        choosing.ask(terms.as_on(&planned_there, &planned));
        let (tried, ended) = (seen.tried, seen.ended);
        let mut choices = offered(&mut choosing, wish, &seen.kept, (first, trying.least))?;
        let mut shown = Judge::on(trying.shown(), &anew, wish, terms, trying, &mut count);
        score_anew(&mut shown, &terms, &mut choices)?;
        let conflict = match is_nothing(&choices, ended) {
            true => conflict(&mut shown, wish, seen, &mut choices)?,
            false => None,
        };
        Ok(Found {
            trying,
            terms,
            planned,
            forbidden: Forbidden::of(&case.input, wish),
            choices,
            conflict,
            tried,
            ended,
        })
    }
}

/// No search takes more runs with all that goes before and after: the plan on every lot of members, calendars on those of
/// the choice, choices on those that are shown.
fn most_runs(trying: Trying) -> usize {
    let chosen_among = 1 + BEST_TRIED + choice::MOST + 2;
    let shown = 1 + NEAREST_TRIED + choice::MOST + 2;
    let of_choice = trying.choosing().len() * chosen_among;
    trying.most_runs + trying.members + of_choice + trying.fresh * shown
}

/// Whether no choice keeps what must hold; where somebody stopped the search the best so far is one.
fn is_nothing(choices: &[Choice], ended: Ended) -> bool {
    let is_short = choices.iter().all(|choice| !choice.score.is_kept);
    choices.is_empty() || is_short && ended != Ended::Stopped
}

/// Why nothing holds, and what would; none where the nearest holds after all, and is a choice.
fn conflict(
    shown: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    seen: Seen,
    choices: &mut Vec<Choice>,
) -> Result<Option<Conflict>, EnsembleError> {
    choices.clear();
    let nearest = nearest_of(shown, wish, seen.near)?;
    if nearest.score.is_kept {
        choices.push(nearest);
        return Ok(None);
    }
    Conflict::of(shown, wish, &nearest, &seen.yielding).map(Some)
}

impl Found {
    /// Whether the first choice is the changes as written, day by day.
    pub fn plan_is_best(&self, input: &ModelInput) -> bool {
        let mut plan = input.changes();
        plan.sort_by_key(|&(day, _)| day);
        let is_same = |(a, b): (&(u32, f64), &(u32, f64))| a.0 == b.0 && is_same_share(a.1, b.1);
        let is_plan = |best: &Choice| {
            let mut pairs = best.changes.iter().zip(&plan);
            best.score.is_kept && best.changes.len() == plan.len() && pairs.all(is_same)
        };
        self.choices.first().is_some_and(is_plan)
    }
    /// Whether the changes as written keep what must hold with less than the first choice: litres that are told, or
    /// days beyond chance.
    pub fn plan_does_with_less(&self) -> bool {
        let (least, planned) = (self.trying.least, &self.planned);
        let has_less = |best: &Choice| match least {
            Least::Litres => planned.litres < best.score.litres - LITRES_TOLD,
            Least::Visits => planned.visits < best.score.visits,
            Least::ReadyDay => planned.is_sooner_than(&best.score),
        };
        planned.is_kept && self.choices.first().is_some_and(has_less)
    }
}

/// Litres are told as whole ones.
const LITRES_TOLD: f64 = 0.5;
