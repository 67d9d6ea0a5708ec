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
//! of all goes on with the last third; once nothing around it is better, it is stirred, some of its days drawn anew, and
//! the search goes on from there, until many such rounds in a row led nowhere better. Where the runs suffice for every
//! calendar there is, the rest are looked at too.
//!
//! Better is what the judge's order says, so that a beginning which keeps nothing yet climbs first. A search
//! may end at the best calendar of its neighbourhood and miss a better one far away; beginnings and rounds make
//! that rare, and where calendars are few the search is held against all of them (tests). Of four wishes with 4,096
//! calendars each, on eight members, 40 searches each for litres, visits and the ready day ended at the best of all
//! every time; of a fifth, for the ready day on a dozen free days, nearly never, but a day behind it: eight members make
//! that ground rough. (The rest were not looked at in these.)

use super::around::{self, Grain};
use super::beginnings::{beginnings, every, stirred};
use super::days::Days;
use super::ended::Ended;
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
    /// So many calendars could be scored with the runs that are left.
    fn affords(&self) -> usize {
        0
    }
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

/// Parts of the runs with which the search goes on from the best of the beginnings, each of which has one.
const PARTS_OF_THE_BEST: usize = 4;
/// Rounds in a row that lead nowhere better, after which a search has settled (measured: of 40 searches among 4,096
/// calendars 33 found the best with 24 rounds, 40 with 200).
const FRUITLESS_ROUNDS: usize = 200;
/// Searches from several beginnings, a given one among them, then on from the best of where they led.
///
/// # Errors
/// Whatever ends the search; what the judge has seen by then stands.
pub fn search<J: Judging>(
    judge: &mut J,
    wish: &CalendarWish,
    first: &Days,
    seed: u64,
) -> Result<Ended, Halt<J::Error>> {
    let few_enough = every(wish, judge.affords());
    let largest = wish.shares.len() as u8;
    let beginnings = beginnings(wish, first, seed);
    let parts = beginnings.len() + PARTS_OF_THE_BEST;
    let mut best: Option<Held> = None;
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
    let Some(mut best) = best else {
        return Ok(Ended::Settled);
    };
    improve(judge, largest, &mut best)?;
    stir(judge, wish, seed, &mut best)?;
    match few_enough {
        Some(all) => look_at(judge, all, best),
        None => Ok(Ended::Settled),
    }
}

/// Goes through every calendar, so that the best of all is known.
fn look_at<J: Judging>(
    judge: &mut J,
    all: Vec<Days>,
    mut best: Held,
) -> Result<Ended, Halt<J::Error>> {
    for days in all {
        best.go(judge, days)?;
    }
    Ok(Ended::All)
}

/// Goes on from the best with some of its days drawn anew, over and over, until that leads nowhere better for long.
fn stir<J: Judging>(
    judge: &mut J,
    wish: &CalendarWish,
    seed: u64,
    best: &mut Held,
) -> Result<(), Halt<J::Error>> {
    let mut fruitless = 0;
    for round in 0.. {
        let days = stirred(&best.days, wish, seed, round);
        let score = judge.score(&days)?;
        let mut held = Held { days, score };
        improve(judge, wish.shares.len() as u8, &mut held)?;
        fruitless += 1;
        if judge.order(&held.score, &best.score).is_lt() {
            *best = held;
            fruitless = 0;
        }
        if fruitless == FRUITLESS_ROUNDS {
            break;
        }
    }
    Ok(())
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
