//! Calendars to begin a search from, and all there are.

use rand::RngExt;

use crate::base::streams::stream;

use super::days::Days;
use super::wish::CalendarWish;

/// Beginnings that are drawn.
const RANDOM: u64 = 2;
/// Changes of beginnings that are even: a few a month, and about two a week.
const FEW: usize = 8;
const MANY: usize = 16;
/// Name of the stream that thins calendars out, and of the one that stirs them.
const THINNED: &str = "calendar";
const STIRRED: &str = "calendar.stirred";

/// The fullest calendar, a given one, some with changes evenly over all free days or over the later half of them, none,
/// and some thinned at random.
pub fn beginnings(wish: &CalendarWish, given: &Days, seed: u64) -> Vec<Days> {
    let largest = wish.shares.len() as u8;
    let later_half = wish.free_days.len() / 2;
    let mut all = vec![
        Days::all(wish, largest),
        given.clone(),
        evenly(wish, 0, MANY),
        evenly(wish, 0, FEW),
        evenly(wish, later_half, FEW),
        Days::all(wish, 0),
    ];
    all.extend((0..RANDOM).map(|number| thinned(wish, seed, number)));
    all
}

/// A calendar with the sizes of some days drawn anew: of few or of many, that is drawn too.
pub fn stirred(days: &Days, wish: &CalendarWish, seed: u64, round: u64) -> Days {
    let mut chance = stream(seed, STIRRED, round);
    let (count, largest) = (days.0.len(), wish.shares.len() as u8);
    let mut other = days.clone();
    for _ in 0..chance.random_range(1..=count.max(1)) {
        other.0[chance.random_range(0..count)] = chance.random_range(0..=largest);
    }
    other
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
    let mut chance = stream(seed, THINNED, number);
    let largest = wish.shares.len() as u8;
    let count = wish.free_days.len().max(2 * MANY);
    let day = |_: &u32| match chance.random_range(0..count) < MANY {
        true => largest,
        false => 0,
    };
    Days(wish.free_days.iter().map(day).collect())
}

/// Every calendar there is, if they are at most so many.
pub fn every(wish: &CalendarWish, most: usize) -> Option<Vec<Days>> {
    let sizes = wish.shares.len() + 1;
    let days = u32::try_from(wish.free_days.len()).ok()?;
    let count = sizes.checked_pow(days).filter(|&count| count <= most)?;
    let size_on = |number: usize, place: u32| (number / sizes.pow(place) % sizes) as u8;
    let calendar = |number| Days((0..days).map(|place| size_on(number, place)).collect());
    Some((0..count).map(calendar).collect())
}
