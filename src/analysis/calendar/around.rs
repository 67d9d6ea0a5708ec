//! The calendars around one: with some changes smaller, larger, moved, or gone.

use super::days::Days;

/// How finely changes are altered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grain {
    /// Whole changes come and go.
    Whole,
    /// Changes become smaller and larger, too.
    Sizes,
}

/// Those that a search looks at when nothing can be taken away, the likeliest first.
pub fn all(days: &Days, largest: u8, grain: Grain) -> Vec<Days> {
    let sizes = grain == Grain::Sizes;
    let finer = |size: u8| if sizes { 1 } else { size.max(1) };
    let resized = traded(days, largest).filter(|_| sizes);
    moved(days)
        .chain(resized)
        .chain(shifted(days))
        .chain(larger(days, finer(largest), largest))
        .chain(two_for_one(days))
        .collect()
}

/// The same with the changes of a row not larger than a size.
pub fn at_most(days: &Days, row: &[usize], size: u8) -> Days {
    let mut other = days.clone();
    for &place in row {
        other.0[place] = other.0[place].min(size);
    }
    other
}

/// The same with other sizes on some days.
pub fn with<const N: usize>(days: &Days, sizes: [(usize, u8); N]) -> Days {
    let mut other = days.clone();
    for (place, size) in sizes {
        other.0[place] = size;
    }
    other
}

/// Every change gone, or with every smaller size too.
pub fn smaller(days: &Days, grain: Grain) -> Vec<(usize, u8)> {
    let changes = days.0.iter().enumerate().filter(|&(_, &size)| size > 0);
    let sizes = move |size: u8| match grain {
        Grain::Whole => 0..1,
        Grain::Sizes => 0..size,
    };
    changes
        .flat_map(|(place, &size)| sizes(size).map(move |less| (place, less)))
        .collect()
}

/// A change larger or a new one, of sizes from the least to the largest.
fn larger(days: &Days, least: u8, largest: u8) -> impl Iterator<Item = Days> + '_ {
    let all = days.0.iter().enumerate();
    all.flat_map(move |(place, &size)| {
        (least.max(size + 1)..=largest).map(move |more| with(days, [(place, more)]))
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
    let changes = days.places();
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
    let changes = days.places();
    let twos: Vec<[usize; 2]> = changes.windows(2).map(|two| [two[0], two[1]]).collect();
    let empty: Vec<usize> = (0..days.0.len()).filter(|&at| days.0[at] == 0).collect();
    twos.into_iter().flat_map(move |[a, b]| {
        let size = days.0[a].max(days.0[b]);
        let of = empty.clone().into_iter();
        of.map(move |to| with(days, [(a, 0), (b, 0), (to, size)]))
    })
}

/// Places two by two, in either order, the nearest first.
fn pairs(days: &Days) -> impl Iterator<Item = (usize, usize)> {
    let count = days.0.len();
    (1..count).flat_map(move |apart| {
        (0..count - apart).flat_map(move |at| [(at, at + apart), (at + apart, at)])
    })
}
