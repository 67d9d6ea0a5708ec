//! The check values that stand in the documentation of the chemistry, each to its last digit.
//!
//! They were worked out from the published formulas in other code than this program's.

mod support;

use firstfill::base::units::MEQ_PER_DKH;
use firstfill::chemistry::air::{pressure_atm, vapour_pressure_atm};
use firstfill::chemistry::still_water::StillWater;
use firstfill::chemistry::{
    activity, ammonia, constants, indicator, nitrous_acid, schmidt, solubility,
};
use support::check::{Check, digits_apart};

/// Sees, in units of their last digit, how far values are from printed ones.
fn see_printed<const N: usize>(check: &mut Check, values: [(f64, &str); N]) {
    for (found, printed) in values {
        check.see(digits_apart(found, printed), printed);
    }
}

#[test]
fn constants_of_carbonic_acid_and_water() {
    let solubility = constants::co2_solubility_mol_per_kg_atm;
    let mut check = Check::of("Check values of K_H, pK_1, pK_2, pK_w");
    see_printed(
        &mut check,
        [
            (solubility(25.0), "0.034046"),
            (solubility(20.0), "0.039186"),
            (constants::pk1(25.0), "6.3519"),
            (constants::pk1(20.0), "6.3819"),
            (constants::pk2(25.0), "10.3289"),
            (constants::pk2(20.0), "10.3756"),
            (constants::pkw(25.0), "13.9948"),
            (constants::pkw(20.0), "14.1646"),
        ],
    );
    check.holds(8);
}

#[test]
fn air_oxygen_and_carbon_dioxide() {
    let oxygen = solubility::oxygen_saturation_mg_per_l;
    let carbon_dioxide = |ppm| solubility::co2_saturation_mg_per_l(25.0, 1.0, ppm);
    let mut check = Check::of("Check values of pressure, vapour, O2 and CO2 saturation");
    see_printed(
        &mut check,
        [
            (pressure_atm(1000.0), "0.88699"),
            (vapour_pressure_atm(25.0), "0.031262"),
            (oxygen(20.0, 1.0), "9.092"),
            (oxygen(25.0, 1.0), "8.263"),
            (oxygen(28.0, 1.0), "7.828"),
            (oxygen(20.0, 0.9), "8.162"),
            (oxygen(25.0, 0.9), "7.411"),
            (oxygen(28.0, 0.9), "7.015"),
            (carbon_dioxide(420.0), "0.610"),
            (carbon_dioxide(600.0), "0.871"),
            (carbon_dioxide(800.0), "1.161"),
        ],
    );
    check.holds(11);
}

#[test]
fn schmidt_numbers() {
    let mut check = Check::of("Check values of Schmidt numbers");
    see_printed(
        &mut check,
        [
            (schmidt::carbon_dioxide(20.0), "600.3"),
            (schmidt::carbon_dioxide(25.0), "468.7"),
            (schmidt::carbon_dioxide(28.0), "404.9"),
            (schmidt::oxygen(20.0), "510.2"),
            (schmidt::oxygen(25.0), "398.8"),
            (schmidt::oxygen(28.0), "344.4"),
        ],
    );
    check.holds(6);
}

#[test]
fn ammonia_nitrous_acid_and_activity() {
    let mut check = Check::of("Check values of ammonia, nitrous acid and activity");
    see_printed(
        &mut check,
        [
            (ammonia::pka(25.0), "9.2448"),
            (ammonia::free_share(25.0, 6.5), "0.001796"),
            (ammonia::free_share(25.0, 7.0), "0.005658"),
            (ammonia::free_share(25.0, 7.5), "0.01768"),
            (ammonia::free_share(25.0, 8.0), "0.05384"),
            (-nitrous_acid::acidity(25.0).log10(), "3.35"),
            (activity::monovalent(25.0, 0.004), "0.93365"),
            (
                activity::ionic_strength_mol_per_l(8.0 * MEQ_PER_DKH, 4.0 * MEQ_PER_DKH),
                "0.0042798",
            ),
        ],
    );
    check.holds(8);
}

#[test]
fn ph_and_carbon_dioxide_from_sour_to_hard_water() {
    let mut ph_check = Check::of("Check values of pH, alkalinity −0.05 to 2.5 meq/L");
    let mut co2_check = Check::of("Check values of CO2, alkalinity −0.05 to 2.5 meq/L");
    for (t_c, alkalinity_meq_per_l, carbon, ionic_strength_mol_per_l, ph, co2) in [
        (25.0, 1.4266, 1.6, 0.0043, "7.2316", "7.699"),
        (25.0, 1.4266, 2.1, 0.0043, "6.6468", "29.64"),
        (25.0, 0.4, 0.42, 0.0043, "7.5923", "0.937"),
        (25.0, 2.5, 2.5, 0.006, "8.2530", "1.244"),
        (25.0, 0.0, 0.5, 0.001, "4.8332", "21.34"),
        (25.0, -0.05, 0.3, 0.002, "4.2993", "13.08"),
        (20.0, 1.0, 2.0, 0.003, "6.3562", "43.99"),
    ] {
        let water = StillWater {
            t_c,
            ionic_strength_mol_per_l,
            alkalinity_meq_per_l,
        };
        let (found_ph, found_co2) = water.ph_and_co2(carbon);
        ph_check.see(digits_apart(found_ph, ph), ph);
        co2_check.see(digits_apart(found_co2, co2), co2);
    }
    ph_check.holds(7);
    co2_check.holds(7);
}

#[test]
fn the_colour_of_the_indicator() {
    // by arithmetic from 4 dKH and pK_1, without activity
    let mut check = Check::of("Check values of the indicator's pH");
    for (co2, ph) in [(15.0, 6.97), (20.0, 6.85), (30.0, 6.67), (40.0, 6.55)] {
        check.see(indicator::reference_ph(co2, 25.0) - ph, co2);
    }
    check.holds(4);
}
