//! Gases at rest: what water holds of them and how they diffuse, against tables of reference
//! libraries, other fits, and physics by hand.
//!
//! Every table names library and version in its first lines; sources and tolerances with their
//! reasons stand in `tests/README.md`, which these tests read.

mod support;

use firstfill::base::units::{GAS_L_ATM_PER_MOL_K, KELVIN_AT_0_C};
use firstfill::chemistry::air::{KPA_PER_ATM, pressure_atm, vapour_pressure_atm};
use firstfill::chemistry::{constants, schmidt, solubility};
use support::check::Check;
use support::table::Table;

fn oxygen_at_sea_level(t_c: f64) -> f64 {
    solubility::oxygen_saturation_mg_per_l(t_c, 1.0)
}

#[test]
fn oxygen_saturation_agrees_with_standard_methods_and_two_libraries() {
    let table = Table::read("oxygen_saturation");
    let mut same = Check::of("Oxygen saturation, 0 to 35 °C");
    let mut printed = Check::of("Oxygen saturation, the printed table, 0 to 35 °C");
    let mut ocean = Check::of("Oxygen saturation, an oceanographic library, 0 to 35 °C");
    let mut rocks = Check::of("Oxygen saturation, a geochemical library, 0 to 35 °C");
    let columns = ["t_c", "bk84_mgl", "sm_table_mgl", "gsw_mgl", "phreeqc_mgl"];
    for [t, formula, line, gsw, phreeqc] in table.numbers(columns) {
        let found = oxygen_at_sea_level(t);
        same.see(found - formula, t);
        printed.see(found - line, t);
        ocean.see(found - gsw, t);
        rocks.see_share(found, phreeqc, t);
    }
    for check in [same, printed, ocean, rocks] {
        check.holds(36);
    }
}

/// Heights for which both checks of altitude stand, m.
const HEIGHTS: [f64; 6] = [500.0, 1000.0, 1500.0, 2000.0, 2500.0, 3000.0];

#[test]
fn oxygen_saturation_falls_with_altitude_as_henry_and_dalton_have_it() {
    // what dissolves goes with the pressure of the dry air: (P − p_w)/(1 − p_w)
    let mut henry = Check::of("Oxygen saturation from 500 to 3000 m, 0 to 35 °C");
    for height in HEIGHTS {
        let pressure = pressure_atm(height);
        for t in (0..=35).map(f64::from) {
            let dry = |pressure: f64| pressure - vapour_pressure_atm(t);
            let by_law = oxygen_at_sea_level(t) * dry(pressure) / dry(1.0);
            let found = solubility::oxygen_saturation_mg_per_l(t, pressure);
            henry.see_share(found, by_law, (height, t));
        }
    }
    henry.holds(6 * 36);
}

#[test]
fn air_pressure_is_that_of_the_standard_atmosphere() {
    let printed_kpa = [95.461, 89.876, 84.559, 79.501, 74.691, 70.121];
    let mut check = Check::of("Air pressure at 500 to 3000 m");
    for (height, kpa) in HEIGHTS.into_iter().zip(printed_kpa) {
        check.see_share(pressure_atm(height) * KPA_PER_ATM, kpa, height);
    }
    check.holds(HEIGHTS.len());
}

#[test]
fn vapour_pressure_is_that_of_the_steam_tables() {
    let mut printed = Check::of("Vapour pressure of water, steam tables, 5 to 40 °C");
    for (t, kpa) in [
        (5.0, 0.8726),
        (10.0, 1.2282),
        (15.0, 1.7058),
        (20.0, 2.3393),
        (25.0, 3.1699),
        (30.0, 4.2470),
        (35.0, 5.6290),
        (40.0, 7.3849),
    ] {
        printed.see_share(vapour_pressure_atm(t) * KPA_PER_ATM, kpa, t);
    }
    printed.holds(8);
    let mut library = Check::of("Vapour pressure of water, oceanographic formula, 15 to 30 °C");
    for [t, atm] in Table::read("co2_constants").numbers(["t_c", "pwv_atm"]) {
        library.see_share(vapour_pressure_atm(t), atm, t);
    }
    library.holds(16);
}

#[test]
fn carbon_dioxide_dissolves_as_measured_and_as_two_libraries_have_it() {
    let table = Table::read("co2_constants");
    let mut same = Check::of("Solubility of CO2, log K_H, 15 to 30 °C");
    let mut weiss = Check::of("Solubility of CO2, log K_H, another fit, 15 to 30 °C");
    let mut phreeqc = Check::of("Solubility of CO2, log K_H, a geochemical library, 15 to 30 °C");
    let mut henry = Check::of("CO2 in water per CO2 in air, 15 to 30 °C");
    let columns = [
        "t_c",
        "logk0_pb82",
        "logk0_weiss74",
        "logk0_phreeqc",
        "kcc_pb82",
    ];
    for [t, fit, other, library, per_air] in table.numbers(columns) {
        let solubility = constants::co2_solubility_mol_per_kg_atm(t);
        same.see(solubility.log10() - fit, t);
        weiss.see(solubility.log10() - other, t);
        phreeqc.see(solubility.log10() - library, t);
        let found = solubility * GAS_L_ATM_PER_MOL_K * (t + KELVIN_AT_0_C);
        henry.see_share(found, per_air, t);
    }
    for check in [same, weiss, phreeqc, henry] {
        check.holds(16);
    }
}

#[test]
fn carbon_dioxide_in_equilibrium_with_air_agrees_with_two_libraries() {
    let table = Table::read("co2_constants");
    let mut same = Check::of("CO2 in equilibrium with air of 420 ppm, 15 to 30 °C");
    let mut others = Check::of("CO2 in equilibrium with air, two other fits, 15 to 30 °C");
    let columns = [
        "t_c",
        "eq_pb82_wet_mgl",
        "eq_weiss_wet_mgl",
        "eq_phreeqc_wet_mgl",
    ];
    for [t, fit, weiss, phreeqc] in table.numbers(columns) {
        let found = solubility::co2_saturation_mg_per_l(t, 1.0, 420.0);
        same.see_share(found, fit, t);
        others.see_share(found, weiss, t);
        others.see_share(found, phreeqc, t);
    }
    same.holds(16);
    others.holds(32);
}

#[test]
fn schmidt_numbers_agree_with_the_fits_of_2014_and_with_two_older_ones() {
    let mut printed = Check::of("Schmidt numbers at 20 °C");
    printed.see(schmidt::carbon_dioxide(20.0) - 600.0, "CO2");
    printed.see(schmidt::oxygen(20.0) - 510.0, "O2");
    printed.holds(2);
    // cubics in temperature: Wanninkhof 1992 for fresh water, Raymond et al. 2012 for oxygen
    let cubic = |[a, b, c, d]: [f64; 4], t: f64| a + t * (b + t * (c + t * d));
    let co2_1992 = [1911.1, -118.11, 3.4527, -0.041320];
    let o2_1992 = [1800.6, -120.10, 3.7818, -0.047608];
    let o2_2012 = [1568.0, -86.04, 2.142, -0.0216];
    let mut carbon = Check::of("Schmidt number of CO2, older fit, 0 to 30 °C");
    let mut oxygen = Check::of("Schmidt number of O2, older fit, 0 to 30 °C");
    let mut streams = Check::of("Schmidt number of O2, a fit used for streams, 0 to 30 °C");
    let mut ratio = Check::of("Transfer of O2 per transfer of CO2, older fit, 15 to 30 °C");
    for t in (0..=30).map(f64::from) {
        carbon.see_share(schmidt::carbon_dioxide(t), cubic(co2_1992, t), t);
        oxygen.see_share(schmidt::oxygen(t), cubic(o2_1992, t), t);
        streams.see_share(schmidt::oxygen(t), cubic(o2_2012, t), t);
        if t >= 15.0 {
            let found = (schmidt::carbon_dioxide(t) / schmidt::oxygen(t)).sqrt();
            ratio.see_share(found, (cubic(co2_1992, t) / cubic(o2_1992, t)).sqrt(), t);
        }
    }
    for check in [carbon, oxygen, streams] {
        check.holds(31);
    }
    ratio.holds(16);
}
