//! The best change to double up about an absence: by the ready day first, then by one figure after another.

use std::cmp::Ordering;

use crate::analysis::ensemble::EnsembleError;
use crate::analysis::levers::lever::Lever;

use super::effects::{Effects, OnFigure};
use super::planned::{Change, doubled};
use super::rounds::Rounds;

/// A change so many days before an absence or after it may be doubled to make up for it.
const NEAR_DAYS: u32 = 14;
/// Plausible tanks on which each of them is tried.
const MEMBERS: usize = 64;
/// The best of these are tried again on all tanks: so few tanks do not tell the first from the second.
const FINALISTS: usize = 4;
/// Figures that settle it between changes that gain as many days, one after the other.
const THEN: [&str; 3] = [
    "nitrite_peak_mg_n_per_l",
    "tan_peak_mg_n_per_l",
    "kh_low_dkh",
];

/// The change near an absence whose doubling brings the mean ready day nearest, by its place in the plan, with what
/// that does on all tanks; none where there is none near.
///
/// # Errors
/// When somebody wishes to stop, or too many members fail.
pub fn best_to_double(
    rounds: &mut Rounds<'_, '_>,
    changes: &[Change],
) -> Result<Option<(usize, Effects)>, EnsembleError> {
    let places = near(rounds, changes);
    let members = MEMBERS.min(rounds.common.members);
    rounds.expect(places.len() * members + FINALISTS.min(places.len()) * rounds.common.members);
    let first = tried(rounds, changes, &places, members)?;
    let finalists: Vec<usize> = first.iter().take(FINALISTS).map(|one| one.0).collect();
    let all = rounds.common.members;
    let last = tried(rounds, changes, &finalists, all)?;
    Ok(last.into_iter().next())
}

/// The changes that lie near an absence and can be made larger, by their places.
fn near(rounds: &Rounds<'_, '_>, changes: &[Change]) -> Vec<usize> {
    let is_near = |change: &Change| {
        let mut spells = rounds.case.away.iter();
        spells.any(|&(from, last)| {
            (from.saturating_sub(NEAR_DAYS)..=last + NEAR_DAYS).contains(&change.day())
        })
    };
    let places = 0..changes.len();
    let grows = |place: &usize| changes[*place].doubled_share() > changes[*place].share;
    places
        .filter(|&place| is_near(&changes[place]))
        .filter(grows)
        .collect()
}

/// Each of some changes doubled on the first members, the best one first; of several that do as well the first of
/// the calendar.
fn tried(
    rounds: &mut Rounds<'_, '_>,
    changes: &[Change],
    places: &[usize],
    members: usize,
) -> Result<Vec<(usize, Effects)>, EnsembleError> {
    let each: Vec<Lever> = places.iter().map(|&n| doubled(&changes[n])).collect();
    let effects = rounds.effects(&each, members)?;
    let mut tried: Vec<(usize, Effects)> = places.iter().copied().zip(effects).collect();
    tried.sort_by(|(one, a), (other, b)| better_first(a, b).then(one.cmp(other)));
    Ok(tried)
}

/// Which of two altered plans is better: the one with the nearer ready day, else with the lower peak of nitrite, then
/// of ammonia, then with the higher KH. Days within their standard error of nothing count as none, and so do figures
/// that move by less than is told of them.
pub fn better_first(a: &Effects, b: &Effects) -> Ordering {
    let days = |effects: &Effects| {
        let ready = &effects.ready;
        match ready.mean_days.abs() > ready.standard_error_days {
            true => ready.mean_days,
            false => 0.0,
        }
    };
    let gained = |effects: &Effects, name: &str| {
        let on = effects.judged.iter().find(|on| on.figure.name == name);
        on.map_or(0.0, told_gain)
    };
    let by_days = days(b).total_cmp(&days(a));
    let by_figures = |name: &str| gained(b, name).total_cmp(&gained(a, name));
    THEN.iter()
        .fold(by_days, |order, name| order.then_with(|| by_figures(name)))
}

fn told_gain(on: &OnFigure) -> f64 {
    let gain = 0.0 - on.worse_by();
    let is_told = gain.abs() >= on.figure.told_from && gain.abs() > on.effect.standard_error;
    if is_told { gain } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::change_worth::effects::figure;
    use crate::analysis::compare::effect::Effect;
    use crate::analysis::levers::paired::Paired;

    /// Days gained and their standard error; peaks of nitrite and ammonia and KH, by which they change.
    fn effects(days: [f64; 2], changes: [f64; 3]) -> Effects {
        let on = |(name, mean): (&&str, f64)| OnFigure {
            figure: figure(name),
            effect: Effect {
                pairs: 100,
                mean,
                standard_error: 0.01,
                points: [mean; 5],
            },
        };
        Effects {
            ready: Paired {
                pairs: 100,
                mean_days: days[0],
                standard_error_days: days[1],
                range_days: [0.0; 2],
                changed: 10,
                only_with: 0,
                only_without: 0,
                neither: 0,
                moved: None,
            },
            judged: THEN.iter().zip(changes).map(on).collect(),
            nitrate_end: None,
            litres_saved: 0.0,
        }
    }

    #[test]
    fn the_ready_day_is_before_any_peak_and_peaks_go_one_after_the_other() {
        let sooner = effects([0.4, 0.1], [0.5, 0.5, -1.0]);
        let lower = effects([0.1, 0.05], [-0.5, -0.5, 1.0]);
        assert_eq!(better_first(&sooner, &lower), Ordering::Less);
        let by_chance = effects([0.1, 0.2], [-0.1, 0.3, 0.0]);
        let as_planned = effects([0.0, 0.0], [-0.07, -0.9, 0.5]);
        let nitrite = "days by chance are none, and nitrite goes before ammonia and KH";
        assert_eq!(
            better_first(&by_chance, &as_planned),
            Ordering::Less,
            "{nitrite}"
        );
        let untold = effects([0.0, 0.0], [-0.04, -0.3, 0.0]);
        let ammonia = effects([0.0, 0.0], [0.0, -0.4, 0.0]);
        assert_eq!(better_first(&ammonia, &untold), Ordering::Less);
        let kh = effects([0.0, 0.0], [0.0, 0.0, 0.3]);
        let nothing = effects([-0.1, 0.2], [0.0, 0.0, 0.05]);
        assert_eq!(better_first(&kh, &nothing), Ordering::Less);
        let later = effects([-0.3, 0.1], [-0.5, -0.5, 1.0]);
        assert_eq!(better_first(&nothing, &later), Ordering::Less);
    }
}
