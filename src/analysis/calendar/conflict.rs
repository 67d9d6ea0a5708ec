//! Why no calendar keeps what must hold, and what would.

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::levers::trials::Trials;

use super::days::Days;
use super::easing::Easing;
use super::judge::Judge;
use super::score::Score;
use super::wish::{CalendarWish, Terms, Trying};

/// What stands against what.
#[derive(Debug, Clone, PartialEq)]
pub struct Conflict {
    /// Day and share of every change of the calendar that comes nearest.
    pub nearest: Vec<(u32, f64)>,
    /// What it does on members that no search has seen.
    pub score: Score,
    /// The limit that is broken in most of them.
    pub limit: Broken,
    /// What would have to be asked less of.
    pub easing: Easing,
    /// How many of 100 would hold with water changed on every day at the largest share.
    pub every_day_of_100: f64,
    /// How many of 100 would hold on the free days if nearly all of the water could be changed.
    pub larger_of_100: f64,
}

/// A limit of a calendar.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Broken {
    /// Ready too late.
    Late,
    /// Too much total ammonia.
    Tan,
    /// Too much nitrite.
    Nitrite,
}

/// The largest share that is tried where the wish allows less (common practice, no source).
pub const NEARLY_ALL: f64 = 0.9;

impl Conflict {
    /// Looks at the calendar that comes nearest, and lifts one constraint after another.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        trials: &Trials<'_>,
        wish: &CalendarWish,
        terms: Terms,
        trying: Trying,
        days: &Days,
    ) -> Result<Conflict, EnsembleError> {
        let score_of = |wish: &CalendarWish, days: &Days| {
            Judge::fresh(trials, wish, terms, trying, &mut || {}).score_of(days)
        };
        let score = score_of(wish, days)?;
        let every_day = CalendarWish {
            free_days: (1..=trials.case.input.last_day).collect(),
            ..wish.clone()
        };
        let larger = CalendarWish {
            shares: vec![NEARLY_ALL],
            ..wish.clone()
        };
        let largest = wish.shares.len() as u8;
        let easing = Easing::of(&score, &terms, trials.case.input.last_day);
        // what would do alone if it gave way stands against it most; else what is broken in most tanks
        let most = [
            (easing.ready_by.is_some(), score.late, Broken::Late),
            (easing.peak_tan_mg_n_per_l.is_some(), score.tan, Broken::Tan),
            (
                easing.peak_nitrite_mg_n_per_l.is_some(),
                score.nitrite,
                Broken::Nitrite,
            ),
        ];
        let limit = most
            .into_iter()
            .rev()
            .max_by_key(|&(does, count, _)| (does, count));
        Ok(Conflict {
            nearest: days.changes(wish),
            limit: limit.map_or(Broken::Late, |(_, _, limit)| limit),
            easing,
            score,
            every_day_of_100: score_of(&every_day, &Days::all(&every_day, largest))?.of_100(),
            larger_of_100: score_of(&larger, &Days::all(&larger, 1))?.of_100(),
        })
    }
}
