//! A calendar: how much water is changed on each day that is free.

use std::iter;

use crate::base::clock::DAY;
use crate::engine::event::{Event, EventKind};
use crate::engine::input::ModelInput;

use super::wish::{CalendarWish, added_up};

/// For each free day the size of its change: 0 for none, else the place of its share, counted from 1.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Days(pub Vec<u8>);

/// Name of the changes of a found calendar.
const NAME: &str = "changes.found";

impl Days {
    /// The same on every free day.
    pub fn all(wish: &CalendarWish, size: u8) -> Days {
        Days(vec![size; wish.free_days.len()])
    }

    /// What comes next to the changes of a plan: each on the nearest free day, with the nearest share.
    pub fn planned(input: &ModelInput, wish: &CalendarWish) -> Days {
        let mut days = Days::all(wish, 0);
        for event in input.events.iter().filter(|event| event.kind.is_change()) {
            let EventKind::Change { share } = event.kind else {
                continue;
            };
            let apart = |&(_, &day): &(usize, &u32)| day.abs_diff(event.minute / DAY);
            let nearest = wish.free_days.iter().enumerate().min_by_key(apart);
            let Some((place, _)) = nearest.filter(|_| event.minute < input.end_minute()) else {
                continue;
            };
            let off = |(_, own): &(usize, &f64)| (*own - share).abs();
            let like = (wish.shares.iter().enumerate()).min_by(|a, b| off(a).total_cmp(&off(b)));
            let size = like.map_or(0, |(at, _)| at as u8 + 1);
            days.0[place] = days.0[place].max(size);
        }
        days
    }

    /// How many changes.
    pub fn visits(&self) -> usize {
        self.0.iter().filter(|&&size| size > 0).count()
    }

    /// Places of the free days with a change.
    pub fn places(&self) -> Vec<usize> {
        (0..self.0.len()).filter(|&at| self.0[at] > 0).collect()
    }

    /// The changes: day and share.
    pub fn changes(&self, wish: &CalendarWish) -> Vec<(u32, f64)> {
        let all = wish.free_days.iter().zip(&self.0);
        all.filter(|&(_, &size)| size > 0)
            .map(|(&day, &size)| (day, wish.shares[usize::from(size) - 1]))
            .collect()
    }

    /// Shares added up: tankfuls of water.
    pub fn tankfuls(&self, wish: &CalendarWish) -> f64 {
        added_up(self.changes(wish).into_iter().map(|(_, share)| share))
    }

    /// A plan with these changes in place of its own, those of the last days again beyond the end.
    #[must_use]
    pub fn put_into(&self, mut input: ModelInput, wish: &CalendarWish) -> ModelInput {
        input.events.retain(|event| !event.kind.is_change());
        for (day, share) in self.changes(wish) {
            let days = iter::once(day).chain(input.again_beyond_the_end(day));
            input.events.extend(days.map(|day| Event {
                minute: day * DAY + wish.minute,
                name: NAME.into(),
                kind: EventKind::Change { share },
            }));
        }
        input
    }
}
