//! What a search has seen: the best calendars, and those that come nearest where none does.

use crate::analysis::ensemble::EnsembleError;

use super::days::Days;
use super::ended::Ended;
use super::judge::Judge;
use super::score::Score;
use super::search::{self, Halt, Judging};
use super::wish::{CalendarWish, Trying};
use super::{choice, conflict};

/// So many of those that come nearest are scored anew where none holds (a judgement, no source).
pub(super) const NEAREST_TRIED: usize = 8;

/// What a search has seen.
pub(super) struct Seen {
    pub(super) ended: Ended,
    pub(super) tried: usize,
    /// Calendars that keep what must hold, the best first.
    pub(super) kept: Vec<(Days, Score)>,
    /// Those that come nearest.
    pub(super) near: Vec<Days>,
    /// Those that would do if something gave way.
    pub(super) yielding: Vec<Days>,
}

impl Seen {
    /// Searches; on the members of the search as many more or fewer must hold as do there with the plan.
    pub(super) fn by(
        judge: &mut Judge<'_, '_>,
        wish: &CalendarWish,
        (first, planned): (&Days, &Score),
        trying: Trying,
    ) -> Result<Seen, EnsembleError> {
        let terms = judge.terms().as_on(&judge.as_planned()?, planned);
        judge.ask(terms);
        let ended = Ended::of(sought(judge, wish, first, trying))?;
        Ok(Seen {
            ended,
            tried: judge.tried(),
            kept: choice::ranked(judge.scores(), &terms, trying),
            near: nearest(judge.scores(), first, wish),
            yielding: conflict::yielding(judge.scores(), &terms, judge.last_day()),
        })
    }
}

/// The calendars of a search in which most tanks hold, the fullest one and the plan's own among them.
fn nearest<'a>(
    scores: impl Iterator<Item = (&'a Days, &'a Score)>,
    first: &Days,
    wish: &CalendarWish,
) -> Vec<Days> {
    let mut all: Vec<(&Days, &Score)> = scores.collect();
    all.sort_by(|a, b| a.1.harm(b.1).then(a.0.cmp(b.0)));
    let full = Days::all(wish, wish.shares.len() as u8);
    let near = all.into_iter().map(|(days, _)| days.clone());
    let mut near: Vec<Days> = near.take(NEAREST_TRIED - 2).collect();
    near.extend([full, first.clone()]);
    near
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
