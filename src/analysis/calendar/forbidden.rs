//! Where a plan's own changes do what `[calendar]` does not allow.

use crate::engine::input::ModelInput;

use super::wish::{CalendarWish, is_same_share};

/// Days of a plan's own changes that are not allowed.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Forbidden {
    /// Days with a change that are not free.
    pub days: Vec<u32>,
    /// Days on which more is changed than may be at once.
    pub too_much: Vec<u32>,
}

impl Forbidden {
    /// What a wish does not allow of a plan's changes, from filling to the last day.
    pub fn of(input: &ModelInput, wish: &CalendarWish) -> Forbidden {
        let most = wish.shares.last().copied().unwrap_or(0.0);
        let is_too_much = |share: f64| share > most && !is_same_share(share, most);
        let changes = input.changes();
        let days_where = |is: &dyn Fn(u32, f64) -> bool| {
            let met = changes.iter().filter(|(day, share)| is(*day, *share));
            let mut days: Vec<u32> = met.map(|&(day, _)| day).collect();
            days.sort_unstable();
            days.dedup();
            days
        };
        Forbidden {
            days: days_where(&|day, _| !wish.free_days.contains(&day)),
            too_much: days_where(&|_, share| is_too_much(share)),
        }
    }

    /// Whether all of it is allowed.
    pub fn is_nothing(&self) -> bool {
        self.days.is_empty() && self.too_much.is_empty()
    }
}
