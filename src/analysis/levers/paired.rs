//! Two ensembles of the same members, compared pair by pair.

use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::ready::Waiting;
use crate::base::moments::Moments;
use crate::base::quantiles::quantiles;

/// Shares of the pairs between which the thin line of a lever runs.
const THIN: [f64; 2] = [0.1, 0.9];

/// What a lever does to the ready day, pair by pair.
///
/// ```text
/// days gained   d = min(T as planned, length) − min(T with it, length)      standard error = sd(d)/√pairs
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Paired {
    /// Pairs of which neither failed.
    pub pairs: usize,
    /// Mean of the days gained; less than nothing where it costs days.
    pub mean_days: f64,
    /// Its standard error, days; 0 of fewer than two pairs.
    pub standard_error_days: f64,
    /// The days gained by which 10 of 100 pairs stay below, and by which 90 do.
    pub range_days: [f64; 2],
    /// Pairs ready within the run only with the lever.
    pub only_with: usize,
    /// Pairs ready within the run only without it.
    pub only_without: usize,
    /// Pairs ready within the run neither way.
    pub neither: usize,
    /// What was last to come right in another share of them than before, the one that moved most.
    pub moved: Option<Moved>,
}

/// A limit that was last to come right in another share of the tanks than before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moved {
    /// The limit.
    pub waiting: Waiting,
    /// Of 100 as planned.
    pub of_100_before: f64,
    /// Of 100 with the lever.
    pub of_100_after: f64,
}

type Pair<'a> = (&'a Told, &'a Told);

impl Paired {
    /// The plan against the same members with a lever pulled.
    pub fn of(plan: &[Member], with: &[Member], last_day: u32) -> Paired {
        let pairs: Vec<Pair> = (plan.iter().zip(with))
            .filter_map(|(plan, with)| Some((plan.told.as_ref().ok()?, with.told.as_ref().ok()?)))
            .collect();
        let gained = |(plan, with): &Pair| days(plan, last_day) - days(with, last_day);
        let mut gains: Vec<f64> = pairs.iter().map(gained).collect();
        let mut moments = Moments::default();
        gains.iter().for_each(|&days| moments.add(days));
        let count = |plan_is: bool, with_is: bool| {
            let ready = |told: &Told| told.ready.day.is_some();
            let alike = |pair: &&Pair| (ready(pair.0), ready(pair.1)) == (plan_is, with_is);
            pairs.iter().filter(alike).count()
        };
        let deviation = moments.deviation().unwrap_or(0.0);
        Paired {
            pairs: pairs.len(),
            mean_days: moments.mean(),
            standard_error_days: deviation / (pairs.len().max(1) as f64).sqrt(),
            range_days: match gains.is_empty() {
                true => [0.0; 2],
                false => quantiles(&mut gains, &THIN),
            },
            only_with: count(false, true),
            only_without: count(true, false),
            neither: count(false, false),
            moved: moved(&pairs),
        }
    }
}

/// The ready day, the last day standing in where there is none within the run.
fn days(told: &Told, last_day: u32) -> f64 {
    f64::from(told.ready.day.unwrap_or(last_day))
}

/// The limit whose share changed most; none where no share changed.
fn moved(pairs: &[Pair]) -> Option<Moved> {
    let mut counts: Vec<(Waiting, [usize; 2])> = Vec::new();
    for (side, told) in pairs.iter().flat_map(|(plan, with)| [(0, plan), (1, with)]) {
        let Some(waiting) = told.ready.waited_for else {
            continue;
        };
        match counts.iter_mut().find(|(known, _)| *known == waiting) {
            Some((_, sides)) => sides[side] += 1,
            None => counts.push((waiting, std::array::from_fn(|at| usize::from(at == side)))),
        }
    }
    let of_100 = |count: usize| 100.0 * count as f64 / pairs.len() as f64;
    let changed = counts.iter().filter(|(_, [before, after])| before != after);
    // the first of several that moved as much
    let most = changed
        .rev()
        .max_by_key(|(_, [before, after])| before.abs_diff(*after));
    most.map(|&(waiting, [before, after])| Moved {
        waiting,
        of_100_before: of_100(before),
        of_100_after: of_100(after),
    })
}
