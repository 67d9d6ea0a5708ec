//! The gas valve: tuned by replaying a day, then left alone.

mod support;

use firstfill::base::clock::{DAY, HOUR, TimeOfDay, Window};
use firstfill::engine::input::{GasHours, GasPlan, ModelInput, TimerLine};
use firstfill::engine::result::RunResult;
use firstfill::engine::run::run;
use support::reference;

const TARGET: f64 = 28.0;
/// How near the target a tuned day's highest must come, mg/L: the rule of the scenario file.
const NEAR: f64 = 0.2;

fn ten_days(filled_at: u32, hours: GasHours, tuned_on: &[u32]) -> ModelInput {
    ModelInput {
        filled_at,
        last_day: 9,
        events: reference::input("base")
            .events
            .into_iter()
            .filter(|event| event.minute >= filled_at && event.minute < 10 * DAY)
            .collect(),
        gas: GasPlan::Hold {
            target_mg_per_l: TARGET,
            tuned_on: tuned_on.to_vec(),
            hours,
        },
        ..reference::input("base")
    }
}

fn given() -> GasHours {
    let window = Window {
        on: TimeOfDay::at(9, 0),
        off: TimeOfDay::at(17, 0),
    };
    GasHours::Given(vec![TimerLine {
        from_day: 0,
        window,
        value: 0.0,
    }])
}

fn highest(result: &RunResult, day: u32) -> f64 {
    let of_day = result.day(day).iter().map(|reading| reading.co2_mg_per_l);
    of_day.fold(0.0, f64::max)
}

#[test]
fn the_highest_of_a_tuned_day_is_the_target_and_the_valve_then_stays_put() {
    let result = run(&ten_days(0, given(), &[4])).unwrap();
    let days: Vec<u32> = result.tunings.iter().map(|tuning| tuning.day).collect();
    assert_eq!(days, [0, 4], "the first day with gas always is one");
    for tuning in &result.tunings {
        assert!(tuning.reached && tuning.trials <= 8);
        let found = highest(&result, tuning.day);
        assert!(
            (found - TARGET).abs() <= NEAR,
            "day {}: {found}",
            tuning.day
        );
    }
    let gas_at_noon = |day: u32| {
        let noon = day * DAY + 12 * HOUR;
        result
            .readings
            .iter()
            .find(|r| r.minute == noon)
            .unwrap()
            .gas_mg_per_h
    };
    assert_eq!(gas_at_noon(5), gas_at_noon(9));
    assert!(
        (gas_at_noon(0) / gas_at_noon(4) - 1.0).abs() > 1e-3,
        "tuning changed the valve"
    );
}

#[test]
fn a_first_day_cut_short_is_tuned_again_on_the_next() {
    let result = run(&ten_days(14 * HOUR, given(), &[])).unwrap();
    let days: Vec<u32> = result.tunings.iter().map(|tuning| tuning.day).collect();
    assert_eq!(days, [0, 1]);
    // what holds 28 mg/L after three hours of gas would go far over it after eight
    assert!(result.tunings[0].gas_mg_per_h > 1.3 * result.tunings[1].gas_mg_per_h);
    assert!((highest(&result, 1) - TARGET).abs() <= NEAR);
}

#[test]
fn hours_that_are_found_end_an_hour_before_the_light_and_start_no_earlier_than_needed() {
    let mut input = ten_days(0, GasHours::Found { from_day: 0 }, &[3]);
    input.parameters = input.parameters.with("k_600", 2.0); // a strong ripple: quick to rise
    // a change half an hour before the light would take half of the gas out again
    input.events.retain(|event| event.name != "change");
    let result = run(&input).unwrap();
    let tuning = result.tunings.last().unwrap();
    assert!(tuning.start_found, "{tuning:?}");
    assert_eq!(
        tuning.window.off,
        TimeOfDay::at(17, 0),
        "lights go off at 18:00"
    );
    let at_lights_on = tuning.at_lights_on_mg_per_l.unwrap();
    // starts are tried every five minutes, and highest is met within 0.2 mg/L
    assert!(
        (0.9 * TARGET..0.9 * TARGET + 1.0).contains(&at_lights_on),
        "{at_lights_on}"
    );
}

#[test]
fn with_air_all_night_the_run_says_that_no_start_is_early_enough() {
    let mut input = ten_days(0, GasHours::Found { from_day: 0 }, &[]);
    input.air = vec![TimerLine {
        from_day: 0,
        window: Window {
            on: TimeOfDay::at(19, 0),
            off: TimeOfDay::at(9, 0),
        },
        value: 2.0,
    }];
    let result = run(&input).unwrap();
    assert!(!result.tunings[0].start_found);
    let words: Vec<String> = result.notices.iter().map(ToString::to_string).collect();
    assert!(
        words
            .iter()
            .any(|said| said.contains("no start gives 90 %")),
        "{words:?}"
    );
}

#[test]
fn what_the_night_left_over_does_not_stand_in_for_the_gas_of_the_day() {
    // dense plants under a still surface keep the gas overnight, and more of it from day to day: at
    // the midnight before the second tuning more is left over than the target
    let tuned = 4;
    let mut input = ten_days(0, given(), &[tuned]);
    input.parameters = input.parameters.with("k_600", 0.2);
    input.events.retain(|event| event.name != "change");
    let result = run(&input).unwrap();
    let left_over = result.day(tuned)[0].co2_mg_per_l;
    assert!(
        left_over > TARGET + NEAR,
        "the case needs more left over: {left_over}"
    );
    let tuning = result
        .tunings
        .iter()
        .find(|tuning| tuning.day == tuned)
        .unwrap();
    let from = tuned * DAY + tuning.window.on.0;
    let of_day = result
        .day(tuned)
        .iter()
        .filter(|reading| reading.minute >= from);
    let highest = of_day
        .map(|reading| reading.co2_mg_per_l)
        .fold(0.0, f64::max);
    assert!((highest - TARGET).abs() <= NEAR, "{highest}");
    assert!(tuning.reached, "{tuning:?}");
}
