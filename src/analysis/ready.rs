//! The ready day: from which day on the tank holds its ripening limits, and whether that is ripe.

use crate::base::clock::DAY;
use crate::engine::error::RunError;
use crate::engine::plan::Plan;
use crate::engine::result::RunResult;

use super::branch::{Branch, Noons, planned_animals};
use super::broken::Broken;
use super::case::Case;
use super::feed::{self, Feed};
use super::ripening::{Held, RipeningWatch};
pub use super::ripening::{OxidationStep, Ripening};
use super::stocking::Search;

/// The answer to "when could fish go in".
#[derive(Debug, Clone, PartialEq)]
pub enum Ready {
    /// From the midnight that opens this day all ripening limits hold, both steps can oxidise the planned
    /// feed, and the planned animals can go in at noon without breaking a ripening limit.
    Day(u32),
    /// The limits hold from this day on, but a step is not shown to be able to oxidise the feed.
    QuietNotRipe {
        /// The day from which the limits hold.
        day: u32,
        /// The step that falls short.
        step: OxidationStep,
        /// Its lowest capacity from that day on, mg N/day.
        capacity_mg_n_per_day: f64,
        /// What the planned feed brings, mg N/day.
        needed_mg_n_per_day: f64,
    },
    /// Not within the run.
    LaterThan(u32),
}

/// Which ripening limit was the last to be met.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waiting {
    /// A limit, without animals.
    Limit(Ripening),
    /// The capacity of a step, with the limits already met.
    Capacity(OxidationStep),
    /// A limit that held without animals, and that the planned ones would have broken.
    WithAnimals(Ripening),
}

/// The ready day with its reason.
#[derive(Debug, Clone, PartialEq)]
pub struct Verdict {
    /// The answer.
    pub ready: Ready,
    /// What the last days waited for; none when it is ready from the first day.
    pub waited_for: Option<Waiting>,
    /// Nitrogen the planned feed brings, mg N/day.
    pub feed_mg_n_per_day: f64,
    /// Whether that feed was planned in the scenario (else the stated default stands in).
    pub feed_is_planned: bool,
    /// The limits still broken past the last day, the one met last first; empty when all hold in time.
    pub unmet: Vec<Waiting>,
    /// First day from which each step's capacity covers the feed to the end, if any.
    pub capacity_covers_from: [Option<u32>; 2],
    /// Running limits broken in the two weeks after the ready day with the animals in; none where there
    /// is no ready day or no animals are planned.
    pub broken_after: Option<Broken>,
}

impl Verdict {
    /// The ready day, if there is one within the run.
    pub fn day(&self) -> Option<u32> {
        match self.ready {
            Ready::Day(day) => Some(day),
            _ => None,
        }
    }
}

/// Judges a run without animals, for a tank in which none are planned: ready is the first whole day from
/// whose midnight all ripening limits hold at every reading to the end of the look-ahead, and from which
/// both steps can oxidise the nitrogen of the feed. A tank that is merely quiet is not called ripe.
pub fn judge(quiet: &RunResult, case: &Case) -> Verdict {
    let feed = feed::planned(&case.input);
    let held = held(quiet, case, &feed);
    verdict(quiet, case, &feed, &held, None)
}

/// Judges a run without animals, and stocks the planned ones at noon of the first such day and of those
/// after it, until the ripening limits hold for two weeks.
///
/// # Errors
/// Those of the runs with animals.
pub fn judge_with_animals(
    quiet: &RunResult,
    case: &Case,
    (plan, noons): (&Plan, &Noons),
) -> Result<Verdict, RunError> {
    let animals = planned_animals(&case.input);
    if animals.is_empty() {
        return Ok(judge(quiet, case));
    }
    let feed = feed::planned(&case.input);
    let held = held(quiet, case, &feed);
    let last_day = case.input.last_day;
    let branch = Branch {
        plan,
        limits: &case.limits,
        animals: &[animals],
    };
    let search = branch.search(noons, Search::new(held.candidate(last_day), last_day));
    Ok(verdict(quiet, case, &feed, &held, Some(&search?)))
}

fn held(quiet: &RunResult, case: &Case, feed: &Feed) -> Held {
    let input = &quiet.input;
    let run = input.filled_at..input.end_minute();
    let mut watch = RipeningWatch::new(&case.limits, run, feed.mg_n_per_day);
    quiet.readings.iter().for_each(|reading| watch.see(reading));
    watch.lane(0)
}

fn verdict(
    quiet: &RunResult,
    case: &Case,
    feed: &Feed,
    held: &Held,
    search: Option<&Search>,
) -> Verdict {
    let last_day = case.input.last_day;
    let (quiet_from, _) = held.quiet_from();
    let needed = feed.mg_n_per_day;
    let ready = match ready_day(held, search, last_day) {
        Some(day) => Ready::Day(day),
        None if quiet_from <= last_day && held.candidate(last_day).is_none() => {
            quiet_not_ripe(quiet, quiet_from, needed)
        }
        None => Ready::LaterThan(last_day),
    };
    Verdict {
        ready,
        waited_for: waited_for(held, search, last_day),
        feed_mg_n_per_day: needed,
        feed_is_planned: feed.is_planned,
        unmet: unmet(held, search, last_day),
        capacity_covers_from: held.able.map(|day| (day <= last_day).then_some(day)),
        broken_after: search.and_then(Search::found).map(|(_, running)| running),
    }
}

/// The ready day by what held without animals and, where some are planned, by the search that stocked them.
pub fn ready_day(held: &Held, search: Option<&Search>, last_day: u32) -> Option<u32> {
    match search {
        Some(search) => search.found().map(|(day, _)| day),
        None => held.candidate(last_day),
    }
}

/// What the last days before the ready day waited for; none when it is ready from the first day.
pub fn waited_for(held: &Held, search: Option<&Search>, last_day: u32) -> Option<Waiting> {
    if let Some(limit) = search.and_then(Search::lost) {
        return Some(Waiting::WithAnimals(limit));
    }
    let ((quiet_from, limit), (able_from, step)) = (held.quiet_from(), held.able_from());
    let waited = quiet_from.max(able_from) > held.first_day;
    let last = if able_from > quiet_from && quiet_from <= last_day {
        Waiting::Capacity(step)
    } else {
        Waiting::Limit(limit)
    };
    waited.then_some(last)
}

/// Limits still broken past the last day.
fn unmet(held: &Held, search: Option<&Search>, last_day: u32) -> Vec<Waiting> {
    let limits = held.limits.iter().zip(Ripening::ALL);
    let without = limits
        .filter(|(from, _)| **from > last_day)
        .map(|(_, limit)| Waiting::Limit(limit));
    let lost = search.filter(|search| search.found().is_none());
    let with = lost.and_then(Search::lost).map(Waiting::WithAnimals);
    without.chain(with).collect()
}

fn quiet_not_ripe(quiet: &RunResult, day: u32, needed_mg_n_per_day: f64) -> Ready {
    let from = quiet.readings.partition_point(|r| r.minute < day * DAY);
    let lowest = |step: OxidationStep| {
        quiet.readings[from..]
            .iter()
            .map(|r| step.capacity(r))
            .fold(f64::INFINITY, f64::min)
    };
    let [ammonia, nitrite] = OxidationStep::BOTH.map(lowest);
    let (step, capacity_mg_n_per_day) = if ammonia < nitrite {
        (OxidationStep::Ammonia, ammonia)
    } else {
        (OxidationStep::Nitrite, nitrite)
    };
    Ready::QuietNotRipe {
        day,
        step,
        capacity_mg_n_per_day,
        needed_mg_n_per_day,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::{CAPACITY_MG_N_PER_DAY, Example};

    fn judged(example: &Example) -> Verdict {
        judge(&example.run(), &example.case())
    }

    #[test]
    fn the_ready_day_opens_at_the_midnight_from_which_all_limits_hold() {
        let verdict = judged(&Example::default());
        assert_eq!(verdict.ready, Ready::Day(6));
        assert_eq!(verdict.waited_for, Some(Waiting::Limit(Ripening::Nitrite)));
    }

    #[test]
    fn quiet_is_not_ripe_until_both_steps_can_take_the_feed() {
        let verdict = judged(&Example {
            able_from_day: 8,
            ..Example::default()
        });
        assert_eq!(verdict.ready, Ready::Day(8));
        assert!(matches!(verdict.waited_for, Some(Waiting::Capacity(_))));
        assert_eq!(verdict.capacity_covers_from, [Some(8), Some(8)]);
    }

    #[test]
    fn a_feed_above_the_capacity_leaves_a_quiet_tank_not_shown_to_be_ripe() {
        // 1 g of feed at 40 % protein and 160 mg N per g protein is 64 mg N, above the 40 there are
        let verdict = judged(&Example {
            stocked: Some((9, 1.0)),
            ..Example::default()
        });
        match verdict.ready {
            Ready::QuietNotRipe {
                day,
                capacity_mg_n_per_day,
                needed_mg_n_per_day,
                ..
            } => {
                assert_eq!((day, capacity_mg_n_per_day), (6, CAPACITY_MG_N_PER_DAY));
                // one product of three decimals; 1e-9 covers its rounding
                assert!(
                    (needed_mg_n_per_day - 64.0).abs() < 1e-9,
                    "{needed_mg_n_per_day}"
                );
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn a_limit_broken_in_the_look_ahead_alone_moves_the_day_past_the_end() {
        let verdict = judged(&Example {
            clean_from_day: 12,
            ..Example::default()
        });
        assert_eq!(verdict.ready, Ready::LaterThan(10));
    }

    #[test]
    fn a_tank_that_never_keeps_its_limits_waits_for_them_and_not_for_capacity() {
        let verdict = judged(&Example {
            clean_from_day: 12,
            able_from_day: 99,
            ..Example::default()
        });
        assert_eq!(verdict.waited_for, Some(Waiting::Limit(Ripening::Nitrite)));
    }

    #[test]
    fn a_tank_clean_from_the_start_waits_for_nothing() {
        let verdict = judged(&Example {
            clean_from_day: 0,
            able_from_day: 0,
            ..Example::default()
        });
        assert_eq!((verdict.ready, verdict.waited_for), (Ready::Day(0), None));
    }

    #[test]
    fn little_chloride_tightens_the_limit_of_nitrite() {
        let example = Example::default();
        let mut run = example.run();
        for reading in &mut run.readings {
            reading.nitrite_mg_n_per_l = 0.05;
            reading.tan_mg_n_per_l = 0.0;
            reading.chloride_mg_per_l = if reading.minute < 7 * DAY { 0.5 } else { 20.0 };
        }
        assert_eq!(judge(&run, &example.case()).ready, Ready::Day(7));
    }
}
