//! The hour of filling, and the minutes of switches.

use firstfill::base::clock::{DAY, HOUR, TimeOfDay, Window};
use firstfill::engine::input::{GasPlan, ModelInput, TimerLine};
use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;

use crate::support::reference;

/// What is compared: name and reading.
type Compared = (&'static str, fn(&Reading) -> f64);

const VALUES: [Compared; 4] = [
    ("TAN", |r| r.tan_mg_n_per_l),
    ("nitrite", |r| r.nitrite_mg_n_per_l),
    ("oxygen", |r| r.oxygen_mg_per_l),
    ("pH", |r| r.ph),
];

#[test]
fn a_tank_without_timers_does_not_care_at_which_hour_it_is_filled() {
    let at_midnight = reference::input("bare_no_change");
    let mut at_ten = at_midnight.clone();
    at_ten.filled_at = 10 * HOUR;
    let (first, second) = (run(&at_midnight).unwrap(), run(&at_ten).unwrap());
    assert_eq!(second.readings[0].minute, 10 * HOUR);
    assert_eq!(second.readings.last().unwrap().minute, 56 * DAY);
    let of_age = |result: &RunResult, minute: u32| {
        *result.readings.iter().find(|r| r.minute == minute).unwrap()
    };
    for age in [HOUR, 3 * DAY, 20 * DAY, 55 * DAY] {
        let (a, b) = (of_age(&first, age), of_age(&second, 10 * HOUR + age));
        for (quantity, value) in VALUES {
            assert_eq!(
                value(&a).to_bits(),
                value(&b).to_bits(),
                "{quantity} at age {age}"
            );
        }
    }
}

#[test]
fn a_planted_tank_filled_in_the_morning_runs_and_keeps_its_timers() {
    let mut input = reference::input("base");
    input.filled_at = 9 * HOUR + 37;
    for stand in &mut input.stands {
        stand.planted_at = input.filled_at;
    }
    for event in &mut input.events {
        event.minute = event.minute.max(input.filled_at);
    }
    let result = run(&input).unwrap();
    assert_eq!(result.readings[0].minute, input.filled_at);
    // steps end on the clock's own grid, and the lamp goes on at ten
    let second = result.readings.iter().find(|r| r.minute > input.filled_at);
    assert_eq!(second.unwrap().minute % 30, 0);
    let lit = result.readings.iter().find(|r| r.light_umol_per_m2_s > 0.0);
    assert_eq!(lit.unwrap().minute, 10 * HOUR);
    assert!(result.ledger.worst() < 1e-9);
}

/// The same plan, everything so many minutes later.
fn later(mut input: ModelInput, minutes: u32) -> ModelInput {
    let all_later = |lines: &mut Vec<TimerLine>| {
        for line in lines {
            let Window { on, off } = &mut line.window;
            *on = TimeOfDay((on.0 + minutes) % DAY);
            *off = TimeOfDay((off.0 + minutes) % DAY);
        }
    };
    input.filled_at += minutes;
    all_later(&mut input.light);
    all_later(&mut input.air);
    if let GasPlan::Rate { lines, .. } = &mut input.gas {
        all_later(lines);
    }
    input
        .events
        .iter_mut()
        .for_each(|event| event.minute += minutes);
    input
        .stands
        .iter_mut()
        .for_each(|stand| stand.planted_at += minutes);
    for cut in &mut input.power_cuts {
        cut.from += minutes;
        cut.until += minutes;
    }
    input
}

/// Readings so many minutes later, both tanks at the same moment of their lives.
fn pairs<'a>(
    first: &'a RunResult,
    second: &'a RunResult,
    minutes: u32,
) -> Vec<(&'a Reading, &'a Reading)> {
    let twin = |a: &'a Reading| {
        let b = |b: &&Reading| (b.minute, b.side) == (a.minute + minutes, a.side);
        Some((a, second.readings.iter().find(b)?))
    };
    first.readings.iter().filter_map(twin).collect()
}

/// Whole steps later: the same steps. The age of a stand is the difference of two days, whose last
/// digits hang on the hour; what comes of that is rounding.
#[test]
fn a_plan_moved_as_a_whole_by_whole_steps_runs_the_same_course() {
    const ROUNDING: f64 = 1e-12;
    let mut input = reference::input("base_night_air");
    input.last_day = 12;
    let first = run(&input).unwrap();
    for hours in [1, 4, 7] {
        let second = run(&later(input.clone(), hours * HOUR)).unwrap();
        let pairs = pairs(&first, &second, hours * HOUR);
        assert!(pairs.len() > 12 * 27, "{} pairs", pairs.len());
        for (a, b) in pairs {
            for (quantity, value) in VALUES {
                let apart = (value(a) - value(b)).abs();
                assert!(
                    apart <= ROUNDING * value(a),
                    "{quantity} at {}: {apart:e}",
                    a.minute
                );
            }
        }
    }
}

/// By odd minutes: every switch and event then falls between steps, which are cut there. What differs
/// is the error of the steps, measured below 5e-4 of the range (DEVELOPERS.md); twice that is
/// allowed.
#[test]
fn a_plan_moved_by_odd_minutes_runs_the_same_course_within_the_error_of_a_step() {
    let mut input = reference::input("base_night_air");
    input.last_day = 12;
    let first = run(&input).unwrap();
    for minutes in [13, 67, 251] {
        let second = run(&later(input.clone(), minutes)).unwrap();
        // seen at events, which fall on no grid
        let pairs = pairs(&first, &second, minutes);
        assert!(pairs.len() >= 20, "{} pairs", pairs.len());
        for (quantity, value) in VALUES {
            let of = |r: &Reading| value(r);
            let (low, high) = first
                .readings
                .iter()
                .map(of)
                .fold((f64::MAX, f64::MIN), |(low, high), x| {
                    (low.min(x), high.max(x))
                });
            for (a, b) in &pairs {
                let apart = (value(a) - value(b)).abs();
                assert!(
                    apart <= 1e-3 * (high - low),
                    "{quantity} at {}: {apart}",
                    a.minute
                );
            }
        }
    }
}

/// A switch one minute later moves the course by a little, wherever it falls: no step waits for the
/// next whole one. A scheme that held the switch until then would jump once in thirty minutes.
#[test]
fn a_course_follows_a_switch_minute_by_minute() {
    let mut input = reference::input("base");
    input.last_day = 2;
    let oxygen_at_dusk = |minute: u32| {
        let mut input = input.clone();
        input.light[0].window.on = TimeOfDay(minute);
        let result = run(&input).unwrap();
        let dusk = 2 * DAY + input.light[0].window.off.0;
        result
            .readings
            .iter()
            .rfind(|r| r.minute == dusk)
            .unwrap()
            .oxygen_mg_per_l
    };
    let course: Vec<f64> = (0..=45)
        .map(|late| oxygen_at_dusk(10 * HOUR + late))
        .collect();
    let steps: Vec<f64> = course.windows(2).map(|pair| pair[0] - pair[1]).collect();
    let mean = (course[0] - course[45]) / 45.0;
    assert!(mean > 0.0, "a shorter day makes less oxygen");
    for (late, step) in steps.iter().enumerate() {
        // less light by one minute is less oxygen by as much, whichever minute it is
        assert!(
            (0.5..1.5).contains(&(step / mean)),
            "minute {late}: {step} of {mean}"
        );
    }
}
