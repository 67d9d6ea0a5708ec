//! Why no calendar keeps what must hold, and what would.

use crate::analysis::ensemble::EnsembleError;

use super::broken::Broken;
use super::choice::Choice;
use super::days::Days;
use super::easing::{self, Easing};
use super::judge::Judge;
use super::score::Score;
use super::wish::{CalendarWish, Terms};

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

/// The largest share that is tried where the wish allows less (common practice, no source).
pub const NEARLY_ALL: f64 = 0.9;

impl Conflict {
    /// Looks at the calendar that comes nearest and at some others that do if something gives way, and lifts one
    /// constraint after another.
    ///
    /// # Errors
    /// When somebody wishes to stop, or too many members fail.
    pub fn of(
        judge: &mut Judge<'_, '_>,
        wish: &CalendarWish,
        nearest: &Choice,
        others: &[Days],
    ) -> Result<Conflict, EnsembleError> {
        let mut scores = vec![nearest.score.clone()];
        for days in others {
            scores.push(judge.score_of(days)?);
        }
        let last_day = judge.last_day();
        let every_day = CalendarWish {
            free_days: (1..=last_day).collect(),
            ..wish.clone()
        };
        let larger = CalendarWish {
            shares: vec![NEARLY_ALL],
            ..wish.clone()
        };
        let largest = wish.shares.len() as u8;
        let easing = Easing::of(&scores, &judge.terms(), last_day);
        let mut fullest = |wish: &CalendarWish, size| {
            let score = judge.allowing(wish).score_of(&Days::all(wish, size));
            score.map(|score| score.of_100())
        };
        Ok(Conflict {
            nearest: nearest.changes.clone(),
            limit: Conflict::strongest(&nearest.score, &easing),
            score: nearest.score.clone(),
            every_day_of_100: fullest(&every_day, largest)?,
            larger_of_100: fullest(&larger, 1)?,
            easing,
        })
    }

    /// What would do alone if it gave way stands against it most; else what is broken in most tanks.
    fn strongest(score: &Score, easing: &Easing) -> Broken {
        let broken = [score.late, score.tan, score.nitrite];
        let counts = Broken::ALL.into_iter().zip(&easing.alone).zip(broken);
        counts
            .rev()
            .max_by_key(|((_, alone), count)| (alone.is_some(), *count))
            .map_or(Broken::Late, |((limit, _), _)| limit)
    }
}

/// Calendars of a search that would do with least if one thing gave way, or all of them.
pub fn yielding<'a>(
    scores: impl Iterator<Item = (&'a Days, &'a Score)> + Clone,
    terms: &Terms,
    last_day: u32,
) -> Vec<Days> {
    let least = |bound: &dyn Fn(&Score) -> Option<f64>| {
        let bounds = scores
            .clone()
            .filter_map(|(days, score)| Some((days, bound(score)?)));
        let least = bounds.min_by(|a, b| a.1.total_cmp(&b.1));
        least.map(|(days, _)| days.clone())
    };
    let alone = Broken::ALL.map(|what| least(&|score| easing::alone(what, score, terms, last_day)));
    let together = least(&|score| {
        let both = easing::together(score, terms, last_day)?;
        both.peak_tan_mg_n_per_l.or(both.peak_nitrite_mg_n_per_l)
    });
    let mut all: Vec<Days> = alone.into_iter().chain([together]).flatten().collect();
    all.sort();
    all.dedup();
    all
}
