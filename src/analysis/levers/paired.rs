//! Two ensembles of the same members, compared pair by pair.

use crate::analysis::ensemble::member::{Member, Told};
use crate::analysis::ready::Waiting;
use crate::base::moments::Moments;
use crate::base::quantiles::quantiles;

/// Shares of the pairs between which the thin line of a lever runs.
const THIN: [f64; 2] = [0.1, 0.9];

/// Standard errors beyond which a mean is told from nothing: what 95 of 100 means of nothing stay under.
pub const CLEAR_ERRORS: f64 = 2.0;

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
    /// Pairs whose ready day moves at all.
    pub changed: usize,
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
        let changed = gains.iter().filter(|&&days| days != 0.0).count();
        let deviation = moments.deviation().unwrap_or(0.0);
        Paired {
            pairs: pairs.len(),
            mean_days: moments.mean(),
            standard_error_days: deviation / (pairs.len().max(1) as f64).sqrt(),
            range_days: match gains.is_empty() {
                true => [0.0; 2],
                false => quantiles(&mut gains, &THIN),
            },
            changed,
            only_with: count(false, true),
            only_without: count(true, false),
            neither: count(false, false),
            moved: moved(&pairs),
        }
    }
}

impl Paired {
    /// Whether the mean is at least two of its standard errors away from nothing.
    pub fn is_clear(&self) -> bool {
        self.mean_days.abs() >= CLEAR_ERRORS * self.standard_error_days
    }
}

/// The ready day, the last day standing in where there is none within the run.
pub fn days(told: &Told, last_day: u32) -> f64 {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::ensemble::member::{Evenings, MemberReady};
    use crate::analysis::example::Example;
    use crate::analysis::limits::Limits;
    use crate::analysis::milestones::figures;
    use crate::analysis::ready::Ripening;
    use crate::engine::error::RunError;

    const NITRITE: Waiting = Waiting::Limit(Ripening::Nitrite);
    const AMMONIA: Waiting = Waiting::Limit(Ripening::TotalAmmonia);

    fn members(ready: &[(Option<u32>, Waiting)]) -> Vec<Member> {
        let figures = figures(&Example::default().run(), &Limits::default());
        let told = |&(day, waiting): &(Option<u32>, Waiting)| Told {
            figures,
            ready: MemberReady {
                day,
                candidate: day,
                quiet_from: day,
                waited_for: Some(waiting),
                broken_after: None,
            },
            evenings: Evenings::default(),
        };
        let numbered = ready.iter().map(told).enumerate();
        numbered
            .map(|(number, told)| Member {
                number,
                told: Ok(told),
            })
            .collect()
    }

    #[test]
    fn days_are_gained_pair_by_pair_with_the_last_day_for_those_never_ready() {
        let plan = [
            (Some(30), NITRITE),
            (None, NITRITE),
            (Some(50), NITRITE),
            (None, AMMONIA),
        ];
        let with = [
            (Some(27), NITRITE),
            (Some(52), AMMONIA),
            (None, NITRITE),
            (None, AMMONIA),
        ];
        let paired = Paired::of(&members(&plan), &members(&with), 56);
        // 3, 4, -6 and 0 days: mean 0.25; sum of squares 61 - 4/16 = 60.75, error sqrt(60.75/3/4) = 2.25
        let near = |a: f64, b: f64| (a - b).abs() < 1e-12; // rounding
        assert!(near(paired.mean_days, 0.25) && near(paired.standard_error_days, 2.25));
        assert_eq!(paired.changed, 3);
        assert_eq!(
            (paired.only_with, paired.only_without, paired.neither),
            (1, 1, 1)
        );
        let moved = Moved {
            waiting: NITRITE,
            of_100_before: 75.0,
            of_100_after: 50.0,
        };
        assert_eq!(
            paired.moved,
            Some(moved),
            "of two that moved as much the first"
        );
    }

    #[test]
    fn a_pair_of_which_one_failed_does_not_count() {
        let plan = members(&[(Some(30), NITRITE), (Some(40), NITRITE)]);
        let mut with = members(&[(Some(20), NITRITE), (Some(20), NITRITE)]);
        with[1].told = Err(RunError::Refused("made up".into()));
        let paired = Paired::of(&plan, &with, 56);
        assert_eq!((paired.pairs, paired.mean_days), (1, 10.0));
        assert_eq!(paired.standard_error_days, 0.0);
    }
}
