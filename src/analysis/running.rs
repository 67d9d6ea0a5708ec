//! Running limits: what a tank with animals must not leave, each with the setting that cures it.
//!
//! They stand beside the ready day and never move it. The daily swing of pH that gas brings is
//! shown elsewhere and is no limit.

use std::ops::RangeInclusive;

use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;
use crate::engine::result::{Reading, RunResult};

use super::beyond::{hours_under, together};
use super::case::Case;
use super::cure;
use super::jumps::{PH, TEMPERATURE, jump};
use super::levels::{self, Level};
use super::limits::Limit;
use super::margin::Stand;
use super::milestones::Extreme;

/// Hours in a day.
const HOURS_A_DAY: f64 = 24.0;

/// What a run says about one running limit.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// Key of the limit in `[limits]`.
    pub key: &'static str,
    /// What was looked at, in words.
    pub label: &'static str,
    /// The value nearest to the limit, or farthest beyond it.
    pub worst: Extreme,
    /// The limit.
    pub limit: f64,
    /// Unit of both; empty for pH.
    pub unit: &'static str,
    /// Whether the limit held all the time.
    pub kept: bool,
    /// Hours beyond the limit; 0 for jumps.
    pub hours: f64,
    /// Days on which the limit was left.
    pub days: Vec<u32>,
    /// How near to harm the worst value is, where there are steps for it.
    pub level: Option<Level>,
    /// The setting that cures it; none where the limit held.
    pub cure: Option<String>,
}

impl Finding {
    /// Where the worst value stands against its limit.
    pub fn stand(&self) -> Stand {
        Stand::of(self.kept, self.worst.value, self.limit)
    }
}

/// All running limits of a run, in the order in which they are printed.
pub fn findings(run: &RunResult, case: &Case) -> Vec<Finding> {
    [
        oxygen(run, case),
        co2(run, case),
        jump(run, &TEMPERATURE, &case.limits.temperature_jump),
        jump(run, &PH, &case.limits.ph_jump),
        shrimp_nitrate(run, case),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn oxygen(run: &RunResult, case: &Case) -> Option<Finding> {
    let shown = run.shown();
    let worst = Extreme::lowest(shown, |r| r.oxygen_mg_per_l)?;
    let mut finding = standing(
        &case.limits.oxygen,
        "lowest oxygen",
        worst,
        shown,
        (|r| r.oxygen_mg_per_l, Side::Lower),
    );
    finding.level = Some(levels::oxygen(worst.value));
    finding.cure = (!finding.kept).then(|| cure::oxygen(run, worst.minute));
    Some(finding)
}

fn co2(run: &RunResult, case: &Case) -> Option<Finding> {
    let shown = run.shown();
    let worst = Extreme::highest(shown, |r| r.co2_mg_per_l)?;
    let limit = &case.limits.co2;
    let mut finding = standing(
        limit,
        "highest CO2",
        worst,
        shown,
        (|r| r.co2_mg_per_l, Side::Upper),
    );
    finding.level = Some(levels::co2(worst.value));
    finding.cure = (!finding.kept).then(|| cure::co2(&run.input, worst.value, limit.value));
    Some(finding)
}

fn shrimp_nitrate(run: &RunResult, case: &Case) -> Option<Finding> {
    let from = first_shrimp(&run.input)?;
    let shown = run.shown();
    let with_shrimp = &shown[shown.partition_point(|r| r.minute < from)..];
    let worst = Extreme::highest(with_shrimp, |r| r.nitrate_mg_n_per_l)?;
    let limit = &case.limits.shrimp_nitrate;
    let mut finding = standing(
        limit,
        "highest nitrate with shrimp",
        worst,
        with_shrimp,
        (|r| r.nitrate_mg_n_per_l, Side::Upper),
    );
    finding.level = Some(levels::nitrate(worst.value));
    finding.cure = (!finding.kept)
        .then(|| "a larger share of the late changes, or refill water with less nitrate".into());
    Some(finding)
}

/// The minute at which the first shrimp of the judged run go in, if any do.
pub fn first_shrimp(input: &ModelInput) -> Option<u32> {
    let end = input.end_minute();
    let is_shrimp = |kind: &EventKind| matches!(kind, EventKind::Stock(a) if a.shrimp);
    input
        .events
        .iter()
        .filter(|event| event.minute < end && is_shrimp(&event.kind))
        .map(|event| event.minute)
        .min()
}

/// A limit that holds or not at every instant: a lower one, or an upper one, which is a lower one of what
/// is counted downwards.
fn standing(
    limit: &Limit,
    label: &'static str,
    worst: Extreme,
    readings: &[Reading],
    (value, side): (fn(&Reading) -> f64, Side),
) -> Finding {
    let sign = match side {
        Side::Lower => 1.0,
        Side::Upper => -1.0,
    };
    let broken = hours_under(readings, |r| sign * value(r), sign * limit.value);
    let mut days: Vec<u32> = broken.iter().flat_map(days_of).collect();
    days.dedup();
    Finding {
        key: limit.key,
        label,
        worst,
        limit: limit.value,
        unit: limit.unit,
        kept: days.is_empty(),
        hours: together(&broken),
        days,
        level: None,
        cure: None,
    }
}

/// On which side of a limit is harm.
#[derive(Clone, Copy)]
enum Side {
    Lower,
    Upper,
}

/// The days that a stretch of hours touches; it ends before the midnight it ends at.
fn days_of(&(from, until): &(f64, f64)) -> RangeInclusive<u32> {
    let day = |hours: f64| (hours / HOURS_A_DAY) as u32;
    let last = day(until);
    let at_midnight = f64::from(last) * HOURS_A_DAY == until;
    day(from)..=last - u32::from(at_midnight && until > from)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::{Example, OXYGEN_LOW};

    fn finding(key: &str, example: &Example) -> Finding {
        findings(&example.run(), &example.case())
            .into_iter()
            .find(|f| f.key == key)
            .unwrap_or_else(|| panic!("no finding {key}"))
    }

    #[test]
    fn a_night_short_of_oxygen_names_its_hour_and_the_air_stone() {
        let oxygen = finding("oxygen", &Example::default());
        assert_eq!(
            (oxygen.worst.value, oxygen.worst.minute),
            (OXYGEN_LOW, 6 * 60)
        );
        // one hourly reading a night, down from 8 and up again: (5 − 4.6)/(8 − 4.6) of an hour either way,
        // on days 0 to 10
        let hours = 11.0 * 2.0 * (5.0 - OXYGEN_LOW) / (8.0 - OXYGEN_LOW);
        assert!((oxygen.hours - hours).abs() < 1e-9, "{}", oxygen.hours);
        assert_eq!(oxygen.days, (0..=10).collect::<Vec<u32>>());
        assert!(oxygen.cure.unwrap().contains("air.on"));
    }

    #[test]
    fn a_stretch_touches_the_days_it_runs_through() {
        let days = |from, until| days_of(&(from, until)).collect::<Vec<u32>>();
        assert_eq!(days(22.0, 26.5), [0, 1]);
        assert_eq!(days(22.0, 24.0), [0]);
        assert_eq!(days(24.0, 25.0), [1]);
    }

    #[test]
    fn a_limit_that_holds_asks_for_no_cure() {
        let co2 = finding("co2", &Example::default());
        assert!(co2.kept && co2.cure.is_none());
        assert_eq!(co2.level, Some(Level::Watch));
    }

    #[test]
    fn a_jump_of_ph_at_a_change_names_the_share_that_would_do() {
        let ph = finding("ph_jump", &Example::default());
        assert!(!ph.kept);
        // 0.7 units at a share of half: 0.5 / 0.7 · 50 % = 35 %
        assert!(
            ph.cure
                .unwrap()
                .starts_with("changes.daily.share about 35 % at most")
        );
    }

    #[test]
    fn nitrate_is_looked_at_only_where_shrimp_go_in() {
        let example = Example {
            stocked: Some((5, 0.1)),
            ..Example::default()
        };
        let run = example.run();
        assert!(
            findings(&run, &example.case())
                .iter()
                .all(|f| f.key != "shrimp_nitrate")
        );
        let mut run = run;
        for event in &mut run.input.events {
            if let EventKind::Stock(animals) = &mut event.kind {
                animals.shrimp = true;
            }
        }
        assert!(
            findings(&run, &example.case())
                .iter()
                .any(|f| f.key == "shrimp_nitrate")
        );
    }
}
