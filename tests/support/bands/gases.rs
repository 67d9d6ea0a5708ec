//! Oxygen, carbon dioxide, and what lives on them.

use firstfill::engine::result::Tuning;

use super::super::diary::{
    CO2, OXYGEN, PH, TAN, at, first_above, half_time_h, highest, lowest, mean, tank,
};
use super::{Checks, DERIVED, NONE, PRACTICE};

pub fn oxygen(checks: &mut Checks) {
    let pulse = "mean summer pulse of a shallow planted reservoir 5.45 mg/L (abstract); ponds 5 to 20 by day, 2 to 8 by night (Reddy 1981, abstract)";
    let dawn = mean((35..42).map(|day| OXYGEN(at("dense", day, 10.0))));
    let dusk = mean((35..42).map(|day| OXYGEN(at("dense", day, 18.0))));
    checks.see(
        9,
        "oxygen swing of a day, dense plants",
        dusk - dawn,
        (3.0, 6.0),
        pulse,
    );
    checks.see(
        9,
        "oxygen before lights-on, dense plants",
        dawn,
        (7.0, 8.0),
        pulse,
    );
    checks.see(
        9,
        "oxygen at lights-off, dense plants",
        dusk,
        (10.0, 12.0),
        pulse,
    );
    let night = |name, from| lowest(name, OXYGEN, from, 56.0);
    checks.see(
        10,
        "lowest oxygen by night, ripple",
        night("base", 14.0),
        (6.0, NONE),
        PRACTICE,
    );
    checks.see(
        10,
        "lowest oxygen by night, dense, ripple",
        night("dense", 14.0),
        (6.0, NONE),
        PRACTICE,
    );
    checks.see(
        10,
        "lowest oxygen by night, dense, still",
        night("dense_still", 14.0),
        (5.0, 6.0),
        PRACTICE,
    );
    checks.see(
        10,
        "lowest oxygen by night, filmed, with fish",
        night("filmed_with_fish", 36.0),
        (0.0, 4.0),
        PRACTICE,
    );
    let source = "derived; common practice, no source";
    let gain = lowest("base_night_air", OXYGEN, 35.0, 42.0) - lowest("base", OXYGEN, 35.0, 42.0);
    checks.see(
        11,
        "oxygen that night air adds to the minimum",
        gain,
        (0.4, 2.0),
        source,
    );
    let morning = mean((35..42).map(|day| CO2(at("base_night_air", day, 9.0))));
    checks.see(
        11,
        "CO2 in the morning after night air",
        morning,
        (1.0, 2.0),
        source,
    );
    let rise =
        mean((35..42).map(|day| PH(at("base_night_air", day, 9.0)) - PH(at("base", day, 9.0))));
    checks.see(
        11,
        "pH that night air adds at dawn",
        rise,
        (0.7, 1.0),
        source,
    );
}

pub fn carbon_dioxide(checks: &mut Checks) {
    let decay = "derived; practice says gone by morning (common practice, no source)";
    checks.see(
        12,
        "half-time of CO2 after gas off, ripple, h",
        half_time_h("base", 40, 18.0),
        (4.0, 9.0),
        decay,
    );
    checks.see(
        12,
        "half-time with the air stone, h",
        half_time_h("base_night_air", 40, 19.0),
        (0.0, 1.0),
        decay,
    );
    checks.see(
        12,
        "half-time, still and dense, h",
        half_time_h("dense_still", 40, 18.0),
        (20.0, NONE),
        decay,
    );
    let source = "derived; common practice, no source";
    let fall = |name| {
        mean((35..42).map(|day| {
            PH(at(name, day, 9.0)) - lowest(name, PH, f64::from(day), f64::from(day) + 1.0)
        }))
    };
    checks.see(
        13,
        "pH fall of a day, ordinary running",
        fall("base"),
        (0.6, 1.0),
        source,
    );
    checks.see(
        13,
        "pH fall of a day, from degassed",
        fall("base_night_air"),
        (1.0, 1.5),
        source,
    );
    checks.see(
        14,
        "lowest CO2 without gas, weeks 3 to 6",
        lowest("no_gas", CO2, 14.0, 42.0),
        (1.5, 5.0),
        DERIVED,
    );
    checks.see(
        14,
        "highest CO2 without gas, weeks 3 to 6",
        highest("no_gas", CO2, 14.0, 42.0),
        (1.5, 5.0),
        DERIVED,
    );
    let rise = mean((14..42).map(|day| PH(at("no_gas", day, 18.0)) - PH(at("no_gas", day, 10.0))));
    checks.see(
        14,
        "pH rise in the light without gas",
        rise,
        (0.02, 1.0),
        source,
    );
    let a_day =
        |tuning: &Tuning| tuning.gas_mg_per_h * f64::from(tuning.window.minutes()) / 60.0 / 1000.0;
    let gas_g = mean(tank("held_at_30").tunings.iter().skip(1).map(a_day));
    checks.see(
        15,
        "gas to hold 30 mg/L in week 1, g a day",
        gas_g,
        (3.0, 6.0),
        DERIVED,
    );
    checks.see(15, "dissolved, g a day", 0.7 * gas_g, (2.0, 4.0), DERIVED);
}

pub fn algae_and_fish(checks: &mut Checks) {
    let source = "common practice, no source; derived; a film is read as 1 g/m²";
    let algae = |name, day| at(name, day, 0.0).algae_g_per_m2;
    checks.see(
        18,
        "algae on day 28, 100 µmol for 8 h",
        algae("base", 28),
        (1.0, 40.0),
        source,
    );
    let bright = first_above("bright_and_long", |r| r.algae_g_per_m2, 0.75).unwrap_or(NONE);
    checks.see(
        18,
        "day of a film, 150 µmol for 10 h",
        bright,
        (7.0, 28.0),
        source,
    );
    checks.see(
        18,
        "algae on day 42 under dense plants",
        algae("dense", 42),
        (0.0, 0.01),
        source,
    );
    let pulse = highest("base_fish", TAN, 42.0, 49.0) - TAN(at("base_fish", 42, 0.0));
    checks.see(
        20,
        "TAN pulse of the first fish week",
        pulse,
        (0.0, 0.15),
        DERIVED,
    );
}
