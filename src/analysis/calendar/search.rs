//! The search among calendars: changes are taken away as long as that is better, then moved about.
//!
//! Nothing is simulated here; whoever searches brings a judge. From each of several beginnings:
//!
//! 1. thin out: every other change is taken away, as long as that is better; then half of the changes in a row are
//!    taken away or made smaller, then a quarter of them, and so on down to two;
//! 2. take away: changes are taken away or made smaller, the one that does least harm alone first, each on top of
//!    those before, as long as that is better;
//! 3. move about: the first calendar found better with one change moved to a day without, one smaller and
//!    another larger, some in a row a free day earlier or later, one larger, or two gone and one new, the nearest
//!    days first; then from 2. again.
//!
//! All of it first with whole changes, then with their sizes. Every beginning gets an even part of the runs, and the best
//! of all goes on with the last third.
//!
//! Better is what the judge's order says, so that a beginning which keeps nothing yet climbs first. A search
//! may end at the best calendar of its neighbourhood and miss a better one far away; several beginnings make
//! that rare, and where calendars are few the search is held against all of them (tests).

use rand::RngExt;

use crate::base::streams::stream;

use super::around::{self, Grain};
use super::days::Days;
use super::score::Score;
use super::wish::CalendarWish;

/// Who scores calendars.
pub trait Judging {
    /// What can end a search.
    type Error;
    /// The score of a calendar.
    ///
    /// # Errors
    /// When the search is to end.
    fn score(&mut self, days: &Days) -> Result<Score, Halt<Self::Error>>;
    /// From now on a search may take one part in so many of the runs that are left.
    fn take_part(&mut self, _of: usize) {}
    /// The score of a calendar on a few members, to tell which of many to try first.
    ///
    /// # Errors
    /// When the search is to end.
    fn glimpse(&mut self, days: &Days) -> Result<Score, Halt<Self::Error>> {
        self.score(days)
    }
    /// Which of two comes first.
    fn order(&self, a: &Score, b: &Score) -> std::cmp::Ordering;
    /// Whether a calendar could come before one with this score, as far as can be told without running it.
    fn could_beat(&self, _days: &Days, _score: &Score) -> bool {
        true
    }
}

/// What ends a search before it finds nothing better.
#[derive(Debug)]
pub enum Halt<E> {
    /// Its part of the runs is taken.
    PartSpent,
    /// All runs are taken.
    Spent,
    /// Something else.
    Ended(E),
}

/// Beginnings that are drawn.
const RANDOM_BEGINNINGS: u64 = 2;
/// Changes of beginnings that are even: a few a month, and about two a week.
const FEW: usize = 8;
const MANY: usize = 16;
/// Parts of the runs with which the search goes on from the best of the beginnings, each of which has one.
const PARTS_OF_THE_BEST: usize = 4;
/// Name of the stream that thins calendars out.
const STREAM: &str = "calendar";

/// Searches from the fullest calendar, from a given one, from some with changes evenly over all free days or over the
/// later half of them, from none, and from some thinned at random; then on from the best of them.
///
/// # Errors
/// Whatever ends the search; what the judge has seen by then stands.
pub fn search<J: Judging>(
    judge: &mut J,
    wish: &CalendarWish,
    first: &Days,
    seed: u64,
) -> Result<(), Halt<J::Error>> {
    let largest = wish.shares.len() as u8;
    let count = wish.free_days.len();
    let mut beginnings = vec![
        Days::all(wish, largest),
        first.clone(),
        evenly(wish, 0, MANY),
        evenly(wish, 0, FEW),
        evenly(wish, count / 2, FEW),
        Days::all(wish, 0),
    ];
    beginnings.extend((0..RANDOM_BEGINNINGS).map(|number| thinned(wish, seed, number)));
    let mut best: Option<Held> = None;
    let parts = beginnings.len() + PARTS_OF_THE_BEST;
    for (number, days) in beginnings.into_iter().enumerate() {
        judge.take_part(parts - number);
        if let Some(held) = searched(judge, largest, days)? {
            let is_better = |best: &Held| judge.order(&held.score, &best.score).is_lt();
            if best.as_ref().is_none_or(is_better) {
                best = Some(held);
            }
        }
    }
    judge.take_part(1);
    match best {
        Some(mut held) => improve(judge, largest, &mut held),
        None => Ok(()),
    }
}

/// Where a search from one beginning gets with its part of the runs; none when there is not even one for it.
fn searched<J: Judging>(
    judge: &mut J,
    largest: u8,
    days: Days,
) -> Result<Option<Held>, Halt<J::Error>> {
    let score = match judge.score(&days) {
        Err(Halt::PartSpent) => return Ok(None),
        scored => scored?,
    };
    let mut held = Held { days, score };
    match improve(judge, largest, &mut held) {
        Ok(()) | Err(Halt::PartSpent) => Ok(Some(held)),
        Err(other) => Err(other),
    }
}

/// The largest changes on so many of the free days from one on, at most, evenly.
fn evenly(wish: &CalendarWish, from: usize, most: usize) -> Days {
    let count = wish.free_days.len();
    let every = (count - from).div_ceil(most).max(1);
    let largest = wish.shares.len() as u8;
    let is_on = |place: usize| place >= from && (place - from).is_multiple_of(every);
    Days(
        (0..count)
            .map(|place| if is_on(place) { largest } else { 0 })
            .collect(),
    )
}

/// The largest changes on free days drawn at random: half of them, or so that about [`MANY`] are drawn.
fn thinned(wish: &CalendarWish, seed: u64, number: u64) -> Days {
    let mut chance = stream(seed, STREAM, number);
    let largest = wish.shares.len() as u8;
    let count = wish.free_days.len().max(2 * MANY);
    let day = |_: &u32| match chance.random_range(0..count) < MANY {
        true => largest,
        false => 0,
    };
    Days(wish.free_days.iter().map(day).collect())
}

/// A calendar and its score.
struct Held {
    days: Days,
    score: Score,
}

impl Held {
    /// Goes to another calendar if that is better.
    fn go<J: Judging>(&mut self, judge: &mut J, days: Days) -> Result<bool, Halt<J::Error>> {
        if !judge.could_beat(&days, &self.score) {
            return Ok(false);
        }
        let score = judge.score(&days)?;
        let is_better = judge.order(&score, &self.score).is_lt();
        if is_better {
            *self = Held { days, score };
        }
        Ok(is_better)
    }
}

/// First with whole changes, then with their sizes: a change made smaller early takes the room in which another could
/// have gone.
fn improve<J: Judging>(judge: &mut J, largest: u8, held: &mut Held) -> Result<(), Halt<J::Error>> {
    for grain in [Grain::Whole, Grain::Sizes] {
        thin_out(judge, held, grain)?;
        loop {
            while take_away(judge, held, grain)? {}
            if !move_about(judge, (largest, grain), held)? {
                break;
            }
        }
    }
    Ok(())
}

/// Takes every other change away as long as that is better; then rows of changes, or makes them smaller: half of all in
/// a row first, then a quarter, down to two.
fn thin_out<J: Judging>(
    judge: &mut J,
    held: &mut Held,
    grain: Grain,
) -> Result<(), Halt<J::Error>> {
    while take_every_other(judge, held)? {}
    let mut length = held.days.visits() / 2;
    while length > 1 {
        let changes = held.days.places();
        for row in changes.chunks(length) {
            let largest = row.iter().map(|&place| held.days.0[place]).max();
            let sizes = match grain {
                Grain::Whole => 0..1,
                Grain::Sizes => 0..largest.unwrap_or(0),
            };
            for size in sizes {
                if held.go(judge, around::at_most(&held.days, row, size))? {
                    break;
                }
            }
        }
        length /= 2;
    }
    Ok(())
}

/// Takes every other change away, those from the first on or those from the second, if that is better.
fn take_every_other<J: Judging>(judge: &mut J, held: &mut Held) -> Result<bool, Halt<J::Error>> {
    let changes = held.days.places();
    for first in [0, 1] {
        let every_other: Vec<usize> = changes.iter().copied().skip(first).step_by(2).collect();
        if !every_other.is_empty()
            && held.go(judge, around::at_most(&held.days, &every_other, 0))?
        {
            return Ok(true);
        }
    }
    Ok(false)
}

/// Makes changes smaller or takes them away as long as that is better: each alone first, on few members, then one
/// after another, each on top of those that went before. Whole changes go first, then parts, of either what does least
/// harm alone.
fn take_away<J: Judging>(
    judge: &mut J,
    held: &mut Held,
    grain: Grain,
) -> Result<bool, Halt<J::Error>> {
    let mut alone = Vec::new();
    for (place, size) in around::smaller(&held.days, grain) {
        let score = judge.glimpse(&around::with(&held.days, [(place, size)]))?;
        alone.push((place, size, score));
    }
    alone.sort_by(|a, b| (a.1 > 0).cmp(&(b.1 > 0)).then(a.2.harm(&b.2)));
    let mut is_better = false;
    for (place, size, _) in alone {
        if held.days.0[place] > size {
            is_better |= held.go(judge, around::with(&held.days, [(place, size)]))?;
        }
    }
    Ok(is_better)
}

/// Goes to the first calendar of the neighbourhood that is better.
fn move_about<J: Judging>(
    judge: &mut J,
    (largest, grain): (u8, Grain),
    held: &mut Held,
) -> Result<bool, Halt<J::Error>> {
    for days in around::all(&held.days, largest, grain) {
        if held.go(judge, days)? {
            return Ok(true);
        }
    }
    Ok(false)
}
