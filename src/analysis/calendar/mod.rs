//! The calendar of water changes that does with least: found by search, on many plausible tanks.
//!
//! Start at [`Found::of`]. What is allowed is a [`CalendarWish`]; what a calendar does is its [`Score`],
//! judged on common members ([`Judge`]); the search knows nothing of tanks (`search`). Choices
//! are scored anew on members that no search has seen, and only that is shown. The plan itself, as near as the
//! free days let it stand, is always one of those that are scored: where it is allowed, no choice does worse.

mod around;
mod beginnings;
pub mod choice;
pub mod conflict;
pub mod days;
pub mod easing;
mod ended;
pub mod forbidden;
pub mod judge;
pub mod score;
pub mod search;
pub mod wish;

use crate::base::stop::Stop;
use crate::engine::input::ModelInput;

use super::case::Case;
use super::ensemble::EnsembleError;
use super::levers::trials::Trials;
use choice::Choice;
use conflict::Conflict;
use days::Days;
pub use ended::Ended;
use forbidden::Forbidden;
use judge::Judge;
use score::Score;
use search::{Halt, Judging};
use wish::{CalendarWish, Least, Terms, Trying, is_same_share};

/// What a search has found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// How it was asked.
    pub trying: Trying,
    /// What had to hold.
    pub terms: Terms,
    /// The changes of the file on the same fresh members: what the choices are held against.
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
        let most = trying.most_runs + trying.fresh * (choice::MOST + BEST_TRIED + 2);
        let mut done = 0;
        let mut count = || {
            done += 1;
            progress(done.min(most), most);
        };
        let terms = Terms::of(&trials, wish, trying, &mut count)?;
        let mut judge = Judge::new(&trials, wish, terms, trying, &mut count);
        let first = Days::planned(&case.input, wish);
        let ended = Ended::of(sought(&mut judge, wish, &first, trying))?;
        let tried = judge.tried();
        let kept = choice::ranked(judge.scores(), &terms, trying);
        let nearest = judge.best();
        // once stopped, what is found is scored all the same
        let never = Stop::default();
        let anew = Trials::of(case, trying.seed, ended.still(stop, &never));
        let mut fresh = Judge::fresh(&anew, wish, terms, trying, &mut count);
        let mut planned = fresh.as_planned()?;
        let terms = terms.as_kept_by(&planned);
        planned.is_kept = terms.are_kept_by(&planned);
        fresh.ask(terms);
        let mut choices = offered(&mut fresh, wish, &kept, (first, trying.least))?;
        let nearest = match nearest.filter(|_| choices.is_empty()) {
            Some((days, _)) => short_of(&mut fresh, wish, days, &mut choices)?,
            None => None,
        };
        let conflict = nearest.map(|days| Conflict::of(&anew, wish, terms, trying, &days));
        Ok(Found {
            trying,
            terms,
            planned,
            forbidden: Forbidden::of(&case.input, wish),
            choices,
            conflict: conflict.transpose()?,
            tried,
            ended,
        })
    }
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

/// Searches for more than is asked, as far as much water keeps more.
fn sought(
    judge: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    first: &Days,
    trying: Trying,
) -> Result<Ended, Halt<EnsembleError>> {
    let full = Days::all(wish, wish.shares.len() as u8);
    let mut most_of_100: f64 = 0.0;
    for days in [&full, first] {
        most_of_100 = most_of_100.max(judge.score(days)?.of_100());
    }
    judge.ask(judge.terms().with_a_margin(trying.members, most_of_100));
    search::search(judge, wish, first, trying.seed)
}

/// The calendar that comes nearest, if it falls short on fresh members too; if it holds there, it is a choice.
fn short_of(
    fresh: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    days: Days,
    choices: &mut Vec<Choice>,
) -> Result<Option<Days>, EnsembleError> {
    let choice = Choice::of(fresh.score_of(&days)?, days.clone(), wish);
    if !choice.score.is_kept {
        return Ok(Some(days));
    }
    choices.push(choice);
    Ok(None)
}

/// The choices, with the fullest calendar and the plan's own among them where they come first.
fn offered(
    fresh: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    kept: &[(Days, Score)],
    (first, least): (Days, Least),
) -> Result<Vec<Choice>, EnsembleError> {
    let mut choices = chosen(fresh, wish, kept)?;
    let full = Days::all(wish, wish.shares.len() as u8);
    for days in [full, first] {
        let own = Choice::of(fresh.score_of(&days)?, days, wish);
        choice::offer(&mut choices, own, least);
    }
    Ok(choices)
}

/// The best calendar that holds on fresh members too, of a few ever surer ones; then some along the trade-off that do.
/// Where none of them does, the best all the same: its fresh score says how far it falls short.
fn chosen(
    fresh: &mut Judge<'_, '_>,
    wish: &CalendarWish,
    kept: &[(Days, Score)],
) -> Result<Vec<Choice>, EnsembleError> {
    let mut choices: Vec<Choice> = Vec::new();
    for (days, _) in choice::surer_and_surer(kept).take(BEST_TRIED) {
        let choice = Choice::of(fresh.score_of(days)?, days.clone(), wish);
        let holds = choice.score.is_kept;
        if choices.is_empty() || holds {
            choices = vec![choice];
        }
        if holds {
            break;
        }
    }
    for days in choice::along(kept) {
        let choice = Choice::of(fresh.score_of(&days)?, days, wish);
        let is_new = !choices.iter().any(|other| other.changes == choice.changes);
        if choice.score.is_kept && is_new && choices.len() < choice::MOST {
            choices.push(choice);
        }
    }
    // a calendar along the trade-off may hold, and do with less, where the best of the search does not
    if choices.iter().any(|choice| choice.score.is_kept) {
        choices.retain(|choice| choice.score.is_kept);
    }
    choices.sort_by(|a, b| fresh.order(&a.score, &b.score));
    Ok(choices)
}

/// Litres are told as whole ones.
const LITRES_TOLD: f64 = 0.5;
/// So many of the best are scored anew until one holds.
const BEST_TRIED: usize = 12;
