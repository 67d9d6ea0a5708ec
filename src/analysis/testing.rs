//! What to test with a kit on which day (common practice, no source).
//!
//! The forecast sets where to look closely: every second day while ammonia or nitrite is on the
//! move, daily around the ready day and before animals go in, weekly for the rest.

use crate::engine::result::RunResult;

use super::arrivals::Arrival;
use super::case::Case;
use super::milestones::readings_of;
use super::ready::Verdict;

/// Below this a kit shows nothing, mg N/L (common practice, no source: first step of the cards).
const SEEN_BY_A_KIT_MG_N_PER_L: f64 = 0.1;

/// The tests of each day of the run, in words; none while away.
pub fn by_day(
    run: &RunResult,
    case: &Case,
    verdict: &Verdict,
    arrivals: &[Arrival],
) -> Vec<Vec<&'static str>> {
    let is_away = |day| {
        case.away
            .iter()
            .any(|&(first, last)| (first..=last).contains(&day))
    };
    (0..=run.input.last_day)
        .map(|day| {
            if is_away(day) {
                Vec::new()
            } else {
                tests_of(run, day, verdict, arrivals)
            }
        })
        .collect()
}

fn tests_of(
    run: &RunResult,
    day: u32,
    verdict: &Verdict,
    arrivals: &[Arrival],
) -> Vec<&'static str> {
    if is_before_animals(day, verdict, arrivals) {
        return vec!["total ammonia", "nitrite", "nitrate", "pH", "KH"];
    }
    let readings = readings_of(run, day);
    let seen = |value: fn(&crate::engine::result::Reading) -> f64| {
        readings.iter().any(|r| value(r) > SEEN_BY_A_KIT_MG_N_PER_L)
    };
    let weekly = day > 0 && day.is_multiple_of(7);
    let second_day = day % 2 == 1;
    let mut tests = Vec::new();
    if weekly || second_day && seen(|r| r.tan_mg_n_per_l) {
        tests.push("total ammonia");
    }
    if weekly || second_day && seen(|r| r.nitrite_mg_n_per_l) {
        tests.push("nitrite");
    }
    if weekly {
        tests.extend(["nitrate", "pH", "KH"]);
    }
    tests
}

/// The three days up to the ready day, and the day of every arrival and the one before.
fn is_before_animals(day: u32, verdict: &Verdict, arrivals: &[Arrival]) -> bool {
    let near_ready = verdict
        .day()
        .is_some_and(|ready| (ready.saturating_sub(2)..=ready).contains(&day));
    near_ready
        || arrivals
            .iter()
            .any(|arrival| day == arrival.day || day + 1 == arrival.day)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::arrivals::arrivals;
    use crate::analysis::example::Example;
    use crate::analysis::ready::judge;

    #[test]
    fn the_days_up_to_the_ready_day_are_tested_whole_and_quiet_days_not_at_all() {
        let example = Example::default();
        let (run, case) = (example.run(), example.case());
        let verdict = judge(&run, &case);
        let tests = by_day(&run, &case, &verdict, &arrivals(&run, &case, &verdict));
        assert_eq!(tests.len(), 11);
        assert_eq!(tests[3], ["total ammonia", "nitrite"]);
        assert_eq!(
            tests[6],
            ["total ammonia", "nitrite", "nitrate", "pH", "KH"]
        );
        assert!(tests[7].contains(&"KH"), "the weekly test");
        assert!(
            tests[8].is_empty() && tests[10].is_empty(),
            "away, and nothing to see"
        );
    }
}
