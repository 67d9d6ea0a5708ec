//! Every conversion against the definition of its unit, and every molar mass against the standard
//! atomic weights.

mod support;

use firstfill::base::units::everyday::{
    ALKALINITY, AMMONIA, AREA, DURATION, FLOW, HARDNESS, LENGTH, MASS, NITRATE, NITRITE, PHOSPHATE,
    POTASSIUM, TEMPERATURE, TEMPERATURE_DIFFERENCE, VOLUME,
};
use firstfill::base::units::{self, Kind, quantity};
use firstfill::chemistry::air::KPA_PER_ATM;
use support::check::Check;

fn read(text: &str, kind: &'static Kind) -> f64 {
    quantity::read(text, kind).unwrap_or_else(|_| panic!("{text}"))
}

#[test]
fn inches_gallons_pounds_and_degrees_are_those_of_the_definitions() {
    // international yard and pound 1959; US gallon 231 in³; imperial gallon 4.54609 L
    let inch: f64 = 0.0254;
    let gallon_l = 231.0 * inch.powi(3) * 1000.0;
    let mut check = Check::of("Length, area, volume, mass, flow, time and temperature");
    for (text, kind, exact) in [
        ("1 in", &LENGTH, inch),
        ("1 ft", &LENGTH, 12.0 * inch),
        ("1 in²", &AREA, inch * inch),
        ("1 ft²", &AREA, 144.0 * inch * inch),
        ("1 cm³", &VOLUME, 1e-3),
        ("1 m³", &VOLUME, 1e3),
        ("1 US gal", &VOLUME, gallon_l),
        ("1 imp gal", &VOLUME, 4.54609),
        ("1 lb", &MASS, 453.59237),
        ("1 oz", &MASS, 453.59237 / 16.0),
        ("1 US gal/h", &FLOW, gallon_l / 60.0),
        ("1 imp gal/h", &FLOW, 4.54609 / 60.0),
        ("1 L/h", &FLOW, 1.0 / 60.0),
        ("1 week", &DURATION, 7.0),
        ("1 h", &DURATION, 3600.0 / 86400.0),
        ("212 °F", &TEMPERATURE, 100.0),
        ("32 °F", &TEMPERATURE_DIFFERENCE, 160.0 / 9.0),
        ("300 K", &TEMPERATURE, 300.0 - 273.15),
    ] {
        check.see_share(read(text, kind), exact, text);
    }
    check.see_share(KPA_PER_ATM, 101.325, "atmosphere");
    check.holds(19);
}

#[test]
fn molar_masses_are_the_standard_atomic_weights() {
    // IUPAC, abridged to five figures; chlorine's lies in an interval around 35.45
    let [h, c, n, o, p, cl, k, ca] = [1.008, 12.011, 14.007, 15.999, 30.974, 35.45, 39.098, 40.078];
    let mut check = Check::of("Atomic and molar masses");
    for (what, found, weight) in [
        ("H", units::HYDROGEN_G_PER_MOL, h),
        ("C", units::CARBON_G_PER_MOL, c),
        ("N", units::NITROGEN_G_PER_MOL, n),
        ("O2", units::OXYGEN_G_PER_MOL, 2.0 * o),
        ("P", units::PHOSPHORUS_G_PER_MOL, p),
        ("Cl2", units::CHLORINE_G_PER_MOL, 2.0 * cl),
        ("K", units::POTASSIUM_G_PER_MOL, k),
        ("Ca", units::CALCIUM_G_PER_MOL, ca),
        ("CO2", units::CO2_G_PER_MOL, c + 2.0 * o),
        ("HCO3", units::BICARBONATE_G_PER_MOL, h + c + 3.0 * o),
        (
            "CaCO3",
            units::CALCIUM_CARBONATE_G_PER_MOL,
            ca + c + 3.0 * o,
        ),
    ] {
        check.see_share(found, weight, what);
    }
    check.holds(11);
    // the exact gas constant of the SI over the exact atmosphere
    let mut gas = Check::of("Gas constant");
    gas.see_share(units::GAS_L_ATM_PER_MOL_K, 8.314462618 / 101.325, "R");
    gas.holds(1);
}

#[test]
fn a_reading_of_a_test_kit_means_the_nitrogen_it_holds() {
    // factors printed on test kits and in water reports: mg/L of the ion in one mg/L of N, P or K
    let mut check = Check::of("Readings as ion or oxide: N, P and K in them");
    for (text, kind) in [
        ("4.427 mg NO3/L", &NITRATE),
        ("3.284 mg NO2/L", &NITRITE),
        ("1.288 mg NH4/L", &AMMONIA),
        ("1.216 mg NH3/L", &AMMONIA),
        ("3.066 mg PO4/L", &PHOSPHATE),
        ("2.291 mg P2O5/L", &PHOSPHATE),
        ("1.205 mg K2O/L", &POTASSIUM),
    ] {
        check.see(read(text, kind) - 1.0, text);
    }
    check.holds(7);
}

#[test]
fn degrees_of_hardness_are_those_of_their_definitions() {
    // German: 10 mg CaO/L; French: 10 mg CaCO3/L; Clark: a grain in an imperial gallon; American: a
    // grain in a US gallon. A grain is 64.79891 mg, exactly.
    let (oxide, carbonate) = (40.078 + 15.999, 40.078 + 12.011 + 3.0 * 15.999);
    let grain = 64.79891;
    let mut check = Check::of("Degrees of hardness and alkalinity");
    for (text, meq) in [
        ("1 dKH", 2.0 * 10.0 / oxide),
        ("1 °fH", 2.0 * 10.0 / carbonate),
        ("1 °Clark", 2.0 * grain / 4.54609 / carbonate),
        ("1 gr/US gal", 2.0 * grain / 3.785411784 / carbonate),
        ("50 mg CaCO3/L", 2.0 * 50.0 / carbonate),
        ("1 mmol HCO3/L", 1.0),
    ] {
        check.see_share(read(text, &ALKALINITY), meq, text);
    }
    for (text, meq) in [
        ("1 dGH", 2.0 * 10.0 / oxide),
        ("1 mmol/L", 2.0),
        ("40.078 mg Ca/L", 2.0),
    ] {
        check.see_share(read(text, &HARDNESS), meq, text);
    }
    check.holds(9);
    let mut printed = Check::of("Degrees of hardness as printed, mg CaCO3/L");
    for (text, mg) in [
        ("1 dGH", 17.848),
        ("1 °Clark", 14.254),
        ("1 gr/US gal", 17.118),
    ] {
        printed.see_share(
            read(text, &HARDNESS),
            read(&format!("{mg} mg CaCO3/L"), &HARDNESS),
            text,
        );
    }
    printed.holds(3);
}
