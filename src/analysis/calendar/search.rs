//! The search among calendars: changes are taken away as long as that is better, then moved about.
//!
//! Nothing is simulated here; whoever searches brings a judge. From each of several beginnings:
//!
//! 1. take away: changes are made smaller or taken away, the one that does best alone first, each on top of
//!    those before, as long as that is better;
//! 2. move about: the first calendar found better with one change moved to a day without, one smaller and
//!    another larger, some in a row a free day earlier or later, one larger, or two gone and one new; then
//!    from 1. again.
//!
//! Better is what the judge's order says, so that a beginning which keeps nothing yet climbs first. A search
//! may end at the best calendar of its neighbourhood and miss a better one far away; several beginnings make
//! that rare, and where calendars are few the search is held against all of them (tests).

use rand::RngExt;

use crate::base::streams::stream;

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
    /// Which of two comes first.
    fn order(&self, a: &Score, b: &Score) -> std::cmp::Ordering;
}

/// What ends a search before it finds nothing better.
#[derive(Debug)]
pub enum Halt<E> {
    /// It has taken as many runs as it may.
    Spent,
    /// Something else.
    Ended(E),
}

/// Beginnings besides the given one, the fullest calendar and the empty one.
const RANDOM_BEGINNINGS: u64 = 5;
/// Name of the stream that thins calendars out.
const STREAM: &str = "calendar";

/// Searches from a given calendar, from the fullest, from none, and from some thinned at random.
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
    let mut beginnings = vec![Days::all(wish, largest), first.clone(), Days::all(wish, 0)];
    beginnings.extend((0..RANDOM_BEGINNINGS).map(|number| thinned(wish, seed, number)));
    for days in beginnings {
        improve(judge, largest, days)?;
    }
    Ok(())
}

/// A calendar with a size drawn for every day.
fn thinned(wish: &CalendarWish, seed: u64, number: u64) -> Days {
    let mut chance = stream(seed, STREAM, number);
    let sizes = wish.shares.len() as u8;
    let day = |_: &u32| chance.random_range(0..=sizes);
    Days(wish.free_days.iter().map(day).collect())
}

/// A calendar and its score.
struct Held {
    days: Days,
    score: Score,
}

fn improve<J: Judging>(judge: &mut J, largest: u8, days: Days) -> Result<(), Halt<J::Error>> {
    let score = judge.score(&days)?;
    let mut held = Held { days, score };
    loop {
        while take_away(judge, &mut held)? {}
        if !move_about(judge, largest, &mut held)? {
            return Ok(());
        }
    }
}

/// Makes changes smaller or takes them away as long as that is better: each alone first, then one after
/// another in that order, each on top of those that went before.
fn take_away<J: Judging>(judge: &mut J, held: &mut Held) -> Result<bool, Halt<J::Error>> {
    let mut alone = Vec::new();
    for (place, size) in smaller(&held.days) {
        alone.push((
            place,
            size,
            judge.score(&with(&held.days, [(place, size)]))?,
        ));
    }
    alone.sort_by(|a, b| judge.order(&a.2, &b.2));
    let mut is_better = false;
    for (place, size, _) in alone {
        if held.days.0[place] <= size {
            continue;
        }
        let days = with(&held.days, [(place, size)]);
        let score = judge.score(&days)?;
        if judge.order(&score, &held.score).is_lt() {
            *held = Held { days, score };
            is_better = true;
        }
    }
    Ok(is_better)
}

/// Goes to the first calendar of the neighbourhood that is better.
fn move_about<J: Judging>(
    judge: &mut J,
    largest: u8,
    held: &mut Held,
) -> Result<bool, Halt<J::Error>> {
    let around = moved(&held.days)
        .chain(traded(&held.days, largest))
        .chain(shifted(&held.days))
        .chain(larger(&held.days, largest))
        .chain(two_for_one(&held.days));
    for days in around.collect::<Vec<_>>() {
        let score = judge.score(&days)?;
        if judge.order(&score, &held.score).is_lt() {
            *held = Held { days, score };
            return Ok(true);
        }
    }
    Ok(false)
}

/// The same with other sizes on some days.
fn with<const N: usize>(days: &Days, sizes: [(usize, u8); N]) -> Days {
    let mut other = days.clone();
    for (place, size) in sizes {
        other.0[place] = size;
    }
    other
}

/// Every change with every smaller size, nothing among them.
fn smaller(days: &Days) -> Vec<(usize, u8)> {
    let changes = days.0.iter().enumerate().filter(|&(_, &size)| size > 0);
    changes
        .flat_map(|(place, &size)| (0..size).map(move |less| (place, less)))
        .collect()
}

fn larger(days: &Days, largest: u8) -> impl Iterator<Item = Days> + '_ {
    let all = days.0.iter().enumerate();
    all.flat_map(move |(place, &size)| {
        (size + 1..=largest).map(move |more| with(days, [(place, more)]))
    })
}

/// A change moved to a day without.
fn moved(days: &Days) -> impl Iterator<Item = Days> + '_ {
    pairs(days).filter_map(|(from, to)| {
        let (size, other) = (days.0[from], days.0[to]);
        (size > 0 && other == 0).then(|| with(days, [(from, 0), (to, size)]))
    })
}

/// A change one size smaller, and another one larger.
fn traded(days: &Days, largest: u8) -> impl Iterator<Item = Days> + '_ {
    pairs(days).filter_map(move |(from, to)| {
        let (size, other) = (days.0[from], days.0[to]);
        let trades = size > 0 && other < largest && (size > 1 || other > 0);
        trades.then(|| with(days, [(from, size - 1), (to, other + 1)]))
    })
}

/// Some changes in a row, all a free day earlier or all a free day later.
fn shifted(days: &Days) -> Vec<Days> {
    let changes: Vec<usize> = (0..days.0.len()).filter(|&at| days.0[at] > 0).collect();
    let mut all = Vec::new();
    for first in 0..changes.len() {
        for last in first + 1..changes.len() {
            let row = &changes[first..=last];
            all.extend([-1, 1].into_iter().filter_map(|by| shift(days, row, by)));
        }
    }
    all
}

/// The changes at some places, all so many places on; none where another stands or the calendar ends.
fn shift(days: &Days, row: &[usize], by: isize) -> Option<Days> {
    let mut other = days.clone();
    for &place in row {
        other.0[place] = 0;
    }
    for &place in row {
        let to = place.checked_add_signed(by)?;
        let size = other.0.get_mut(to).filter(|size| **size == 0)?;
        *size = days.0[place];
    }
    Some(other)
}

/// Two changes next to each other gone, and one on a day without.
fn two_for_one(days: &Days) -> impl Iterator<Item = Days> + '_ {
    let changes: Vec<usize> = (0..days.0.len()).filter(|&at| days.0[at] > 0).collect();
    let twos: Vec<[usize; 2]> = changes.windows(2).map(|two| [two[0], two[1]]).collect();
    let empty: Vec<usize> = (0..days.0.len()).filter(|&at| days.0[at] == 0).collect();
    twos.into_iter().flat_map(move |[a, b]| {
        let size = days.0[a].max(days.0[b]);
        let of = empty.clone().into_iter();
        of.map(move |to| with(days, [(a, 0), (b, 0), (to, size)]))
    })
}

/// Places two by two, in either order.
fn pairs(days: &Days) -> impl Iterator<Item = (usize, usize)> {
    let count = days.0.len();
    let all = (0..count).flat_map(move |from| (0..count).map(move |to| (from, to)));
    all.filter(|(from, to)| from != to)
}
