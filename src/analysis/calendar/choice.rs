//! A few calendars along the trade-off between little water and an early ready day.

use std::cmp::Ordering;

use super::days::Days;
use super::score::Score;
use super::wish::{CalendarWish, Least, Terms, Trying};

/// Most calendars that are offered.
pub const MOST: usize = 4;

/// A calendar that is offered, or could be.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// The size of the change on each free day.
    pub days: Days,
    /// Day and share of every change.
    pub changes: Vec<(u32, f64)>,
    /// What it does on members that neither a search nor a choice has seen.
    pub score: Score,
}

impl Choice {
    /// A calendar with its fresh score.
    pub fn of(score: Score, days: Days, wish: &CalendarWish) -> Choice {
        Choice {
            changes: days.changes(wish),
            days,
            score,
        }
    }
}

/// Those that are offered: a plan's own calendar among them, none that is like another.
pub fn offer(choices: &mut Vec<Choice>, own: Choice, least: Least) {
    with_own(choices, own, least);
    told_apart(choices);
}

/// Takes a plan's own calendar among the choices, where it holds and comes before all of them.
fn with_own(choices: &mut Vec<Choice>, own: Choice, least: Least) {
    let comes_first = |best: &Choice| own.score.order(&best.score, least).is_lt();
    if own.score.is_kept && choices.first().is_none_or(comes_first) {
        choices.retain(|choice| choice.score.is_kept);
        choices.insert(0, own);
    }
}

/// Leaves out what nobody could tell from a choice before it.
pub fn told_apart(choices: &mut Vec<Choice>) {
    let mut told: Vec<Choice> = Vec::new();
    for choice in choices.drain(..) {
        if told.iter().all(|other| differ(&other.score, &choice.score)) {
            told.push(choice);
        }
    }
    *choices = told;
}

/// Whether two calendars differ by a visit, by litres that would be noticed, or by days beyond chance.
fn differ(one: &Score, other: &Score) -> bool {
    let litres = (one.litres - other.litres).abs();
    let is_noticed = litres > NOTICED * one.litres.max(other.litres);
    one.visits != other.visits
        || is_noticed
        || one.is_sooner_than(other)
        || other.is_sooner_than(one)
}

/// Litres are told apart from this share of them on: nobody empties a tank more exactly by the bucket (a judgement,
/// no source).
const NOTICED: f64 = 0.02;

/// Calendars that keep what must hold, the best first; those that were dropped after a few members do not count.
pub fn ranked<'a>(
    scores: impl Iterator<Item = (&'a Days, &'a Score)>,
    terms: &Terms,
    trying: Trying,
) -> Vec<(Days, Score)> {
    let mut kept: Vec<(Days, Score)> = scores
        .filter(|(_, score)| !score.is_dropped && terms.are_kept_by(score))
        .map(|(days, score)| (days.clone(), score.clone()))
        .collect();
    kept.sort_by(|a, b| a.1.less(&b.1, trying.least).then(a.0.cmp(&b.0)));
    kept
}

/// Of ranked calendars the first, then always the next one in which more tanks hold.
pub fn surer_and_surer(kept: &[(Days, Score)]) -> impl Iterator<Item = &(Days, Score)> {
    let mut most = None;
    kept.iter().filter(move |(_, score)| {
        let is_surer = most.is_none_or(|most| score.hold > most);
        if is_surer {
            most = Some(score.hold);
        }
        is_surer
    })
}

/// Some that no other beats in water and in the ready day, evenly along them, the ends among them.
pub fn along(kept: &[(Days, Score)]) -> Vec<Days> {
    let beaten = |one: &Score| kept.iter().any(|(_, other)| beats(other, one));
    let mut front: Vec<&(Days, Score)> = kept.iter().filter(|(_, one)| !beaten(one)).collect();
    front.sort_by(|a, b| by_water(&a.1, &b.1).then(a.0.cmp(&b.0)));
    front.dedup_by(|a, b| by_water(&a.1, &b.1).is_eq());
    let mut chosen: Vec<Days> = Vec::new();
    for step in 0..MOST.min(front.len()) {
        let days = &front[step * (front.len() - 1) / (MOST - 1)].0;
        if !chosen.contains(days) {
            chosen.push(days.clone());
        }
    }
    chosen
}

/// Less water first; of the same, the earlier ready.
fn by_water(a: &Score, b: &Score) -> Ordering {
    let days = a.mean_ready_day.total_cmp(&b.mean_ready_day);
    a.tankfuls.total_cmp(&b.tankfuls).then(days)
}

/// Whether one calendar is as good as another in both, and better in one.
fn beats(one: &Score, other: &Score) -> bool {
    let (water, days) = (
        one.tankfuls.total_cmp(&other.tankfuls),
        one.mean_ready_day.total_cmp(&other.mean_ready_day),
    );
    water.is_le() && days.is_le() && (water.is_lt() || days.is_lt())
}
