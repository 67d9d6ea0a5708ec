//! Stories of a young tank that need no figure, each with its counter-case.
//!
//! Source of each: common practice, no source, unless named.

mod support;

use firstfill::base::clock::DAY;
use firstfill::engine::close_ups::CloseUps;
use firstfill::engine::event::Event;
use firstfill::engine::happening::held;
use firstfill::engine::plan::Plan;
use firstfill::engine::recorder::{Recorder, crossed};
use firstfill::engine::run::run;
use firstfill::engine::simulation::Simulation;
use firstfill::engine::timers::line_on;
use firstfill::model::conserved::QUANTITIES;
use support::diary::{
    NITRITE, OXYGEN, PH, TAN, at, clean_day, first_above, gas_lines, highest, kh, lowest, peak,
    stand,
};
use support::reference;

#[test]
fn ammonia_peaks_before_nitrite_and_nitrate_comes_last() {
    for name in ["bare_no_change", "base", "weekly", "base_seed100"] {
        let (_, ammonia) = peak(name, TAN, 0.0, 56.0);
        let (_, nitrite) = peak(name, NITRITE, 0.0, 56.0);
        assert!(ammonia < nitrite, "{name}: {ammonia}, then {nitrite}");
    }
    let nitrate = |day| at("bare_no_change", day, 0.0).nitrate_mg_n_per_l;
    assert!(nitrate(20) < 4.0 && nitrate(40) > 15.0);
}

#[test]
fn seeding_brings_everything_forward_by_about_ten_days_per_tenfold() {
    // derived from the growth of both guilds: about 10 days per factor of ten
    let [nothing, some, much] = ["base", "seeded_ten_times", "base_seed100"].map(clean_day);
    assert!((6.0..14.0).contains(&(nothing - some)), "{nothing} {some}");
    assert!((5.0..14.0).contains(&(some - much)), "{some} {much}");
    // and not the other way round
    let first = |name| first_above(name, NITRITE, 0.1).unwrap();
    assert!(first("base_seed100") < first("seeded_ten_times"));
    assert!(first("seeded_ten_times") < first("base"));
}

#[test]
fn a_soil_that_only_takes_sticks_and_a_soft_tap_alone_does_not() {
    assert!(clean_day("acid_soil_bare") > 55.0);
    assert!(kh("acid_soil_bare", 41) < 0.1);
    assert!(clean_day("soft_bare") < 40.0);
    assert!(NITRITE(at("acid_soil_bare", 56, 0.0)) > 2.0);
}

#[test]
fn gas_pulls_ph_down_by_day_and_without_gas_light_pushes_it_up() {
    let by_day = |name, day| PH(at(name, day, 17.0)) - PH(at(name, day, 9.0));
    for day in [10, 30, 50] {
        assert!(by_day("base", day) < -0.4, "with gas, day {day}");
        assert!(by_day("no_gas", day) > 0.0, "without gas, day {day}");
        assert!(
            by_day("bare_std", day).abs() < 0.3,
            "in the dark without gas, day {day}"
        );
    }
}

#[test]
fn oxygen_is_highest_near_lights_off_and_lowest_before_lights_on() {
    for name in ["base", "dense", "no_gas"] {
        for day in [20, 40] {
            let from = f64::from(day);
            let (_, top) = peak(name, OXYGEN, from, from + 1.0);
            let (_, bottom) = peak(name, |r| -OXYGEN(r), from, from + 1.0);
            let hour = |day: f64| 24.0 * day.fract();
            assert!(
                (14.0..=18.1).contains(&hour(top)),
                "{name}: highest at {}",
                hour(top)
            );
            assert!(
                (0.0..=10.5).contains(&hour(bottom)),
                "{name}: lowest at {}",
                hour(bottom)
            );
        }
    }
    // no plants, no light: no swing but that of water changes
    let swing = highest("bare_std", OXYGEN, 40.0, 42.0) - lowest("bare_std", OXYGEN, 40.0, 42.0);
    assert!(swing < 0.1, "{swing}");
}

#[test]
fn air_by_night_lifts_the_dawn_to_within_half_a_milligram_of_saturation() {
    for day in [14, 28, 42] {
        let below = |name| {
            let dawn = at(name, day, 8.0);
            OXYGEN(dawn) * (100.0 / dawn.oxygen_saturation_percent - 1.0)
        };
        assert!(
            below("base_night_air") < 0.5,
            "day {day}: {}",
            below("base_night_air")
        );
        assert!(
            below("base") > 0.8,
            "day {day}, without air: {}",
            below("base")
        );
        assert!(below("dense_still") > below("dense") && below("dense") > below("base"));
    }
}

#[test]
fn gas_doubles_the_stems_and_without_it_they_stand_still() {
    let growth = |name| stand(name, 0, 56) / stand(name, 0, 0);
    assert!(growth("base") > 2.0);
    assert!(growth("no_gas") < 1.2);
    assert!(at("dense_no_gas", 56, 0.0).plants_g < at("dense", 56, 0.0).plants_g);
}

#[test]
fn a_night_without_power_costs_days_and_a_dry_start_saves_weeks() {
    assert!(clean_day("base_power_cut") > clean_day("base") + 0.5);
    assert!(clean_day("dry_start") < clean_day("base") - 10.0);
    assert!(highest("dry_start", TAN, 0.0, 56.0) < 0.5 * highest("base", TAN, 0.0, 56.0));
}

#[test]
fn the_first_fish_hardly_move_a_tank_that_has_handled_its_soil() {
    let pulse = |name, from| highest(name, TAN, from, from + 7.0);
    assert!(pulse("base_fish", 43.0) < 0.15);
    // the same feed in week 1 of a tank without films would be seen at once
    let mut early = reference::input("bare_std");
    let stock = reference::input("base_fish")
        .events
        .into_iter()
        .find(|event| event.kind.is_about_animals())
        .unwrap();
    early.events.push(Event { minute: 0, ..stock });
    early.last_day = 13;
    let early = run(&early).unwrap();
    let later = early.readings.last().unwrap().tan_mg_n_per_l;
    let without = TAN(at("bare_std", 14, 0.0));
    assert!(
        later > without + 0.12,
        "{later} with early fish, {without} without"
    );
}

#[test]
fn the_accounts_close_every_day() {
    // 0.5 % a day asked; conservation gives rounding
    let input = reference::input("base_fish");
    let plan = Plan::new(&input);
    let mut tank = Simulation::filled(&plan);
    let mut recorder = Recorder::new(&plan, CloseUps::none());
    let contents = plan.model.contents();
    let start = held(contents, &plan.start);
    for day in 0..=input.last_day {
        tank.keeping.gas = vec![line_on(&gas_lines(&input), day).copied()];
        tank.advance((day + 1) * DAY, &mut recorder).unwrap();
        let now = held(contents, &tank.state);
        let ways = crossed(plan.model.matrix(), &tank.extents, &tank.crossed);
        for (place, quantity) in QUANTITIES.iter().enumerate() {
            let came: f64 = ways.iter().map(|way| way[place]).sum();
            let moved: f64 = ways.iter().map(|way| way[place].abs()).sum();
            let error = now[place] - start[place] - came;
            assert!(
                error.abs() <= 1e-9 * (start[place].abs() + moved),
                "{} on day {day}: {error:e}",
                quantity.name()
            );
        }
    }
}
