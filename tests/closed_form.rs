//! Runs of the engine against formulas one can work out on paper.
//!
//! In these tanks all life is left out (no films, plants or algae), so that one thing happens at a
//! time. Tolerances: the step is of second order, so a decay at rate k over a time t is off by
//! about (k·Δt)²/6·k·t of itself, with Δt 5 minutes; sums that a step gets right exactly are held
//! to rounding.

mod support;

use firstfill::base::clock::{DAY, days};
use firstfill::chemistry::still_water::StillWater;
use firstfill::chemistry::{schmidt, solubility};
use firstfill::engine::close_ups::CloseUps;
use firstfill::engine::event::{Animals, Event, EventKind};
use firstfill::engine::input::ModelInput;
use firstfill::engine::result::{Reading, RunResult, Side};
use firstfill::engine::run::{run, run_closely};
use firstfill::model::composition::Composition;
use support::check::{Check, digits_apart};
use support::reference;

const LITRES: f64 = 50.0;
const SURFACE_M2: f64 = 0.18;
/// One step, days.
const STEP_DAYS: f64 = 15.0 / 1440.0;

/// Water in glass at 25 °C in a room just as warm and moist: nothing lives, nothing evaporates.
fn lifeless() -> ModelInput {
    let mut input = reference::input("bare_no_change");
    // laws are held against their forms more closely than a step of an hour lets them come
    input.step_minutes = 15;
    input.tank.soil_l = 0.0;
    input.seed_level = 0.0;
    input.events.clear();
    input.heating.set_c = None;
    input.heating.start_c = 25.0;
    input.room.temperature_c = 25.0;
    input.room.humidity_frac = 1.0;
    input.parameters = input
        .parameters
        .with("G0", 0.0)
        .with("pump", 0.0)
        .with("lamp", 0.0);
    input.fill.temperature_c = 25.0;
    input.refill.temperature_c = 25.0;
    input
}

/// `lifeless` with other parameters.
fn with(mut input: ModelInput, parameters: &[(&str, f64)]) -> ModelInput {
    for (id, value) in parameters {
        input.parameters = input.parameters.with(id, *value);
    }
    input
}

/// Runs a tank and reads it every five minutes, inside steps too.
fn run_and_look(input: &ModelInput) -> RunResult {
    run_closely(input, &CloseUps::none().throughout(5)).unwrap()
}

fn change(day: u32, share: f64) -> Event {
    Event {
        minute: day * DAY,
        name: "change".into(),
        kind: EventKind::Change { share },
    }
}

fn at(result: &RunResult, minute: u32) -> &Reading {
    result
        .readings
        .iter()
        .rfind(|reading| reading.minute == minute)
        .unwrap()
}

/// The error of one step in something that fades so fast, as a share.
fn of_a_step(per_day: f64) -> f64 {
    (per_day * STEP_DAYS).powi(3) / 12.0
}

/// Asserts that a decay towards `rest` follows e^(−k·t); `more` is allowed beside the step's error:
/// (k·Δt)⁴/24 a step, and once (k·Δt)³/12 between the ends of one. Returns how many were compared.
fn assert_decays(
    check: &mut Check,
    result: &RunResult,
    value: fn(&Reading) -> f64,
    rest: f64,
    per_day: f64,
    more: f64,
) -> usize {
    let start = value(&result.readings[0]) - rest;
    let mut compared = 0;
    for reading in result.seen(0, u32::MAX) {
        let turned = per_day * days(reading.minute);
        if turned > 3.0 {
            break;
        }
        let left = (value(reading) - rest) / start;
        let expected = (-turned).exp();
        let of_the_step = of_a_step(per_day) * (1.0 + turned);
        let error = (left / expected - 1.0).abs();
        check.see(error, reading.minute);
        assert!(
            error <= 1.1 * of_the_step + 1e-7 + more,
            "minute {}: {left} left, not {expected}: {error:e}, allowed {of_the_step:e} + {more:e}",
            reading.minute
        );
        compared += 1;
    }
    assert!(compared > 20, "only {compared} readings compared");
    compared
}

#[test]
fn n_changes_leave_what_was_there_to_the_nth_power() {
    // (1 − f)^n. Chloride only mixes
    let mut check = Check::of("Twelve changes of 30, 50 or 80 %: (1 − f)^n of chloride is left");
    for share in [0.5, 0.3, 0.8] {
        let mut input = lifeless();
        input.last_day = 12;
        input.fill.chloride_mg_per_l = 40.0;
        input.refill.chloride_mg_per_l = 0.0;
        input.events = (1..=12).map(|day| change(day, share)).collect();
        let result = run(&input).unwrap();
        for (done, event) in result.events.iter().enumerate() {
            let left = event.after.chloride_mg_per_l / 40.0;
            let expected = (1.0 - share).powi(done as i32 + 1);
            check.see_share(left, expected, (share, done));
            assert!((event.litres - share * LITRES).abs() < 1e-10);
        }
        assert_eq!(result.events.len(), 12);
    }
    check.holds(3 * 12);
}

#[test]
fn changes_bring_a_pool_towards_the_tap() {
    // c_n = tap + (c_0 − tap)·(1 − f)^n
    let mut check = Check::of("Eight changes: tap + (c_0 − tap)·(1 − f)^n of chloride");
    let mut input = lifeless();
    input.last_day = 8;
    input.fill.chloride_mg_per_l = 5.0;
    input.refill.chloride_mg_per_l = 30.0;
    input.events = (1..=8).map(|day| change(day, 0.5)).collect();
    let result = run(&input).unwrap();
    for (done, event) in result.events.iter().enumerate() {
        let expected = 30.0 - 25.0 * 0.5f64.powi(done as i32 + 1);
        check.see(event.after.chloride_mg_per_l - expected, done);
    }
    check.holds(8);
}

/// A tank fed evenly: the only source of ammonia, mg N/L/day, and nobody takes it.
fn fed_evenly(source: f64) -> ModelInput {
    let mut input = with(lifeless(), &[("feces", 0.0), ("fec_N", 0.0)]);
    let excreted_mg_per_g = input.parameters.get("e_N") * input.parameters.get("N_feed");
    input.events.push(Event {
        minute: 0,
        name: "feeders".into(),
        kind: EventKind::Stock(Animals {
            mass_g: 0.0,
            feed_g_per_day: source * LITRES / (0.4 * excreted_mg_per_g),
            protein_frac: 0.4,
            shrimp: false,
        }),
    });
    input.fill.tan_mg_n_per_l = 0.0;
    input.refill.tan_mg_n_per_l = 0.0;
    input
}

#[test]
fn a_constant_source_and_regular_changes_end_in_a_saw_tooth() {
    // peak s·T/f, trough s·T·(1 − f)/f, as multiples of s: 2.0 and 1.0 for half a tank daily, 4 and
    // 2 on alternate days, 2.9 and 0.9 for 70 %, 14 and 7 weekly, 23 and 16 for 30 % weekly.
    // A constant source is exact in any step.
    let mut peaks = Check::of("Saw-tooth of an even source and regular changes: every peak");
    let mut teeth = Check::of("Saw-tooth: its limits s·T/f and s·T·(1 − f)/f as printed");
    for (share, every, printed) in [
        (0.5, 1, ["2.0", "1.0"]),
        (0.5, 2, ["4", "2"]),
        (0.7, 2, ["2.9", "0.9"]),
        (0.5, 7, ["14", "7"]),
        (0.3, 7, ["23", "16"]),
    ] {
        let source = 0.8;
        let mut input = fed_evenly(source);
        input.last_day = 70 * every;
        let changes = (1..=70).map(|done| change(done * every, share));
        input.events.extend(changes);
        let result = run(&input).unwrap();
        let records: Vec<_> = result.events.iter().filter(|e| e.litres > 0.0).collect();
        assert_eq!(records.len(), 70);
        let period = f64::from(every);
        for (done, record) in records.iter().enumerate() {
            let so_far = 1.0 - (1.0f64 - share).powi(done as i32 + 1);
            let peak = source * period / share * so_far;
            peaks.see_share(record.before.tan_mg_n_per_l, peak, (share, every, done));
        }
        let last = records[69];
        let found = [last.before, last.after].map(|reading| reading.tan_mg_n_per_l / source);
        for (tooth, printed) in found.into_iter().zip(printed) {
            teeth.see(digits_apart(tooth, printed), (share, every));
        }
    }
    peaks.holds(5 * 70);
    teeth.holds(5 * 2);
}

#[test]
fn soil_and_water_share_their_ammonium_exponentially() {
    // Two boxes, total conserved: TAN = C∞·(1 − e^(−k·t)), C∞ = NX0/(V + m·Kd + V_pw),
    // k = k_ex·1000·A·(1/V + 1/(m·Kd + V_pw)) at 25 °C. Derived.
    let mut input = lifeless();
    input.tank.soil_l = 9.4;
    input.fill.tan_mg_n_per_l = 0.0;
    let input = with(input, &[("N_o0", 0.0), ("E_H0", 0.0)]);
    let result = run_and_look(&input);
    let get = |id: &str| input.parameters.get(id);
    let kg = 9.4 * get("rho_soil");
    let soil_l = kg * get("Kd") + 9.4 * get("por");
    let per_day = get("k_ex") * 1000.0 * SURFACE_M2 * (1.0 / LITRES + 1.0 / soil_l);
    let rest = kg * get("q0") / (LITRES + soil_l);
    println!("leaching: {per_day:.4} per day towards {rest:.3} mg N/L");
    assert!(rest > 3.0);
    // 1e-7 more: the table of temperature factors is off by up to 2e-8
    let mut check = Check::of("Soil and water as two boxes: TAN against the exponential");
    let count = assert_decays(
        &mut check,
        &result,
        |r| r.tan_mg_n_per_l,
        rest,
        per_day,
        1e-7,
    );
    check.holds(count);
    let last = at(&result, 56 * DAY);
    assert!((last.tan_mg_n_per_l - last.pore_water_ammonium_mg_n_per_l).abs() < 1e-5);
}

#[test]
fn oxygen_returns_with_the_half_time_of_its_transfer() {
    // t½ = ln 2·V/(k·1000·A), k = k_600·(600/Sc)^0.5. Derived; Sc of Wanninkhof 2014
    let mut input = lifeless();
    input.last_day = 1;
    input.fill.oxygen_mg_per_l = 2.0;
    let result = run_and_look(&input);
    let velocity = 0.75 * (600.0 / schmidt::oxygen(25.0)).sqrt();
    let per_day = velocity * 1000.0 * SURFACE_M2 / LITRES;
    let rest = solubility::oxygen_saturation_mg_per_l(25.0, 1.0);
    let mut check = Check::of("Oxygen returning to saturation: against the exponential");
    let count = assert_decays(
        &mut check,
        &result,
        |r| r.oxygen_mg_per_l,
        rest,
        per_day,
        1e-6,
    );
    check.holds(count);
    let half_time_h = 24.0 * half_time_days(&result, |r| r.oxygen_mg_per_l, rest);
    let by_formula = 24.0 * std::f64::consts::LN_2 / per_day;
    // a straight line between two readings, five minutes apart
    let mut half = Check::of("Oxygen returning to saturation: half-time ln 2·V/(k·A)");
    half.see_share(half_time_h, by_formula, "half-time");
    half.holds(1);
}

/// When half of the way to `rest` is done, on the line between two readings.
fn half_time_days(result: &RunResult, value: fn(&Reading) -> f64, rest: f64) -> f64 {
    let seen = result.seen(0, u32::MAX);
    let left = |reading: &Reading| (value(reading) - rest) / (value(seen[0]) - rest);
    let after = seen.iter().position(|r| left(r) < 0.5).unwrap();
    let (a, b) = (seen[after - 1], seen[after]);
    let part = (left(a) - 0.5) / (left(a) - left(b));
    days(a.minute) + part * (days(b.minute) - days(a.minute))
}

/// A lifeless tank with a content of CO2 (mg/L) at an alkalinity (meq/L).
fn gassed(co2_mg_per_l: f64, alkalinity_meq_per_l: f64) -> ModelInput {
    let mut input = lifeless();
    input.last_day = 1;
    input.fill.alkalinity_meq_per_l = alkalinity_meq_per_l;
    input.refill = input.fill;
    let water = StillWater {
        t_c: 25.0,
        ionic_strength_mol_per_l: input.refill.ionic_strength_mol_per_l(),
        alkalinity_meq_per_l,
    };
    input.fill.inorganic_carbon_mmol_per_l = water.carbon_at_co2(co2_mg_per_l);
    input
}

#[test]
fn carbon_dioxide_leaves_with_the_half_time_of_its_transfer() {
    // t½ = ln 2·V/(k·1000·A). In sour water (−1 meq/L, pH 3) all carbon but 0.05 % is CO2; with
    // 1 meq/L bicarbonate stays while CO2 goes, until above pH 7.7 some of it turns to carbonate and
    // makes up for up to 4 % of what is left.
    let velocity = 0.75 * (600.0 / schmidt::carbon_dioxide(25.0)).sqrt();
    let per_day = velocity * 1000.0 * SURFACE_M2 / LITRES;
    let rest = solubility::co2_saturation_mg_per_l(25.0, 1.0, 600.0);
    let sour = Check::of("CO2 leaving sour water: against the exponential");
    let hard = Check::of("CO2 leaving water of 1 meq/L: against the exponential");
    for (alkalinity, more, mut check) in [(-1.0, 2e-3, sour), (1.0, 0.04, hard)] {
        let result = run_and_look(&gassed(30.0, alkalinity));
        assert!((result.readings[0].co2_mg_per_l - 30.0).abs() < 1e-5);
        let count = assert_decays(&mut check, &result, |r| r.co2_mg_per_l, rest, per_day, more);
        check.holds(count);
        let half_time_h = 24.0 * half_time_days(&result, |r| r.co2_mg_per_l, rest);
        let by_formula = 24.0 * std::f64::consts::LN_2 / per_day;
        assert!((half_time_h / by_formula - 1.0).abs() < 0.3 * more);
    }
}

#[test]
fn thirty_mg_of_carbon_dioxide_fall_to_five_in_twelve_hours_at_0_2_per_hour() {
    // derived: 2.5 + 27.5·e^(−0.2·12) = 4.99 mg/L with an equilibrium of 2.5
    let factor = (600.0 / schmidt::carbon_dioxide(25.0)).sqrt();
    let velocity = 0.2 * 24.0 * LITRES / (1000.0 * SURFACE_M2) / factor;
    let room = 2.5 / solubility::co2_saturation_mg_per_l(25.0, 1.0, 1.0);
    let input = with(
        gassed(30.0, 1.0),
        &[("k_600", velocity), ("co2_room", room)],
    );
    let result = run(&input).unwrap();
    let left = at(&result, DAY / 2).co2_mg_per_l;
    let mut check = Check::of("CO2: 30 mg/L fall to 5 in twelve hours at 0.2 per hour");
    check.see(left - 5.0, "mg/L");
    check.holds(1);
}

#[test]
fn chlorine_and_chloramine_fade_at_ten_a_day_and_leave_their_ammonia() {
    // first order; 0.19754 mg N per mg Cl2 by atomic masses
    let mut input = lifeless();
    input.last_day = 2;
    input.fill = Composition {
        chlorine_mg_cl2_per_l: 0.5,
        chloramine_mg_cl2_per_l: 2.0,
        tan_mg_n_per_l: 0.0,
        ..input.fill
    };
    let alkalinity = input.fill.alkalinity_meq_per_l;
    let result = run_and_look(&input);
    let per_day = input.parameters.get("k_Cl");
    assert_eq!(per_day, 10.0);
    let mut fading = Check::of("Chlorine and chloramine fading: against the exponential");
    let free = |r: &Reading| r.chlorine_mg_cl2_per_l;
    let bound = |r: &Reading| r.chloramine_mg_cl2_per_l;
    let count = assert_decays(&mut fading, &result, free, 0.0, per_day, 0.0)
        + assert_decays(&mut fading, &result, bound, 0.0, per_day, 0.0);
    fading.holds(count);
    let mut left = Check::of("Chloramine fading: the ammonia and alkalinity it leaves");
    for reading in &result.readings {
        let freed = (2.0 - reading.chloramine_mg_cl2_per_l) * 14.007 / 70.906;
        left.see(reading.tan_mg_n_per_l - freed, reading.minute);
        let raised = reading.alkalinity_meq_per_l - alkalinity;
        left.see(raised - freed / 14.007, reading.minute);
    }
    left.holds(2 * result.readings.len());
}

#[test]
fn an_unheated_tank_cools_to_the_room_exponentially() {
    // k = 86.4·U·A_wall/(V·c_w), W and kJ. Derived
    let mut input = lifeless();
    input.last_day = 3;
    input.heating.start_c = 28.0;
    input.room.temperature_c = 18.0;
    let input = with(input, &[("E_act", 0.0)]);
    let result = run(&input).unwrap();
    let per_day = 86.4 * 6.0 * 0.83 / (LITRES * 4.184);
    let mut check = Check::of("An unheated tank cooling to the room: against the exponential");
    let count = assert_decays(&mut check, &result, |r| r.temperature_c, 18.0, per_day, 0.0);
    check.holds(count);
    let evaporating = run(&with(input, &[("E_act", 0.6)])).unwrap();
    let colder = at(&evaporating, DAY).temperature_c;
    assert!(
        colder < at(&result, DAY).temperature_c - 0.5,
        "evaporation cools further: {colder}"
    );
}

#[test]
fn in_a_lifeless_tank_nothing_else_moves() {
    let result = run(&lifeless()).unwrap();
    let (first, last) = (&result.readings[0], result.readings.last().unwrap());
    assert_eq!(last.minute, 56 * DAY);
    assert_eq!(last.side, Side::Plain);
    let mut check = Check::of("A lifeless tank after 56 days: what it began with");
    for (what, value) in [
        ("TAN", (|r| r.tan_mg_n_per_l) as fn(&Reading) -> f64),
        ("nitrate", |r| r.nitrate_mg_n_per_l),
        ("alkalinity", |r| r.alkalinity_meq_per_l),
        ("chloride", |r| r.chloride_mg_per_l),
        ("volume", |r| r.volume_l),
        ("temperature", |r| r.temperature_c),
    ] {
        // a share of what was there, or of one where there was nothing
        let change = (value(last) - value(first)) / value(first).abs().max(1.0);
        check.see(change, what);
    }
    check.holds(6);
}
