//! The ready day: from which day on the tank holds its ripening limits, and whether that is ripe.

use crate::base::clock::DAY;
use crate::engine::result::{Reading, RunResult, Side};

use super::case::Case;
use super::feed;
use super::limits::Limits;

/// The answer to "when could fish go in".
#[derive(Debug, Clone, PartialEq)]
pub enum Ready {
    /// From the midnight that opens this day all ripening limits hold, and both steps can oxidise
    /// the planned feed.
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

/// One of the two steps of nitrification.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OxidationStep {
    /// Ammonia to nitrite.
    Ammonia,
    /// Nitrite to nitrate.
    Nitrite,
}

/// Which ripening limit was the last to be met.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waiting {
    /// Total ammonia.
    TotalAmmonia,
    /// Nitrite.
    Nitrite,
    /// Free ammonia.
    FreeAmmonia,
    /// The capacity of a step, with the limits already met.
    Capacity(OxidationStep),
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

/// Judges a run without animals: the first whole day from whose midnight all ripening limits hold
/// at every reading to the end of the look-ahead, and from which both steps can oxidise the
/// nitrogen of the planned feed. A tank that is merely quiet is not called ripe.
pub fn judge(quiet: &RunResult, case: &Case) -> Verdict {
    let feed = feed::planned(case);
    let needed = feed.mg_n_per_day;
    let after = |breaks: &dyn Fn(&Reading) -> bool| first_day_after(quiet, breaks);
    let limits = BREAKS.map(|(waiting, breaks)| (after(&|r| breaks(&case.limits, r)), waiting));
    let able = STEPS.map(|step| after(&|r| step.capacity(r) < needed));
    let (quiet_from, limit_waited_for) = latest(&limits);
    let (able_from, step) = latest(&[(able[0], STEPS[0]), (able[1], STEPS[1])]);
    let last_day = case.input.last_day;
    let ready = if quiet_from > last_day {
        Ready::LaterThan(last_day)
    } else if able_from > last_day {
        quiet_not_ripe(quiet, quiet_from, needed)
    } else {
        Ready::Day(quiet_from.max(able_from))
    };
    let limits_hold_in_time = quiet_from <= last_day;
    let waited_for = if able_from > quiet_from && limits_hold_in_time {
        Waiting::Capacity(step)
    } else {
        limit_waited_for
    };
    let waited = quiet_from.max(able_from) > first_whole_day(quiet);
    Verdict {
        ready,
        waited_for: waited.then_some(waited_for),
        feed_mg_n_per_day: needed,
        feed_is_planned: feed.is_planned,
        unmet: limits
            .iter()
            .filter(|(day, _)| *day > last_day)
            .map(|(_, waiting)| *waiting)
            .collect(),
        capacity_covers_from: able.map(|day| (day <= last_day).then_some(day)),
    }
}

const STEPS: [OxidationStep; 2] = [OxidationStep::Ammonia, OxidationStep::Nitrite];

type Breaks = fn(&Limits, &Reading) -> bool;

/// What breaks each ripening limit; where two were last broken at the same time, the first is named.
const BREAKS: [(Waiting, Breaks); 3] = [
    (Waiting::Nitrite, |limits, r| {
        r.nitrite_mg_n_per_l > limits.nitrite_with(r.chloride_mg_per_l)
    }),
    (Waiting::TotalAmmonia, |limits, r| {
        r.tan_mg_n_per_l > limits.total_ammonia.value
    }),
    (Waiting::FreeAmmonia, |limits, r| {
        r.free_ammonia_mg_n_per_l > limits.free_ammonia.value
    }),
];

impl OxidationStep {
    /// What the microbes could oxidise in this step, mg N/day.
    pub fn capacity(self, reading: &Reading) -> f64 {
        match self {
            OxidationStep::Ammonia => reading.ammonia_capacity_mg_n_per_day,
            OxidationStep::Nitrite => reading.nitrite_capacity_mg_n_per_day,
        }
    }
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            OxidationStep::Ammonia => "ammonia to nitrite",
            OxidationStep::Nitrite => "nitrite to nitrate",
        }
    }
}

/// The first whole day from whose midnight no reading breaks the rule, to the end of the look-ahead.
fn first_day_after(run: &RunResult, breaks: &dyn Fn(&Reading) -> bool) -> u32 {
    match run.readings.iter().rev().find(|r| breaks(r)) {
        None => first_whole_day(run),
        // what stands just before a midnight still belongs to the day that ends there
        Some(last) if last.minute.is_multiple_of(DAY) && last.side == Side::Before => {
            last.minute / DAY
        }
        Some(last) => last.minute / DAY + 1,
    }
}

fn first_whole_day(run: &RunResult) -> u32 {
    run.input.filled_at.div_ceil(DAY)
}

fn latest<T: Copy>(days: &[(u32, T)]) -> (u32, T) {
    days.iter()
        .copied()
        .reduce(|best, next| if next.0 > best.0 { next } else { best })
        .expect("there is always a rule")
}

fn quiet_not_ripe(quiet: &RunResult, day: u32, needed_mg_n_per_day: f64) -> Ready {
    let from = quiet.readings.partition_point(|r| r.minute < day * DAY);
    let lowest = |step: OxidationStep| {
        quiet.readings[from..]
            .iter()
            .map(|r| step.capacity(r))
            .fold(f64::INFINITY, f64::min)
    };
    let [ammonia, nitrite] = STEPS.map(lowest);
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
        assert_eq!(verdict.waited_for, Some(Waiting::Nitrite));
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
        assert_eq!(verdict.waited_for, Some(Waiting::Nitrite));
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
