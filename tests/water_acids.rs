//! Acids and bases at rest: equilibrium constants, pH, free ammonia and nitrous acid, against
//! tables of reference libraries over their whole grids.
//!
//! Every table names library and version in its first lines; sources and tolerances with their
//! reasons stand in `tests/README.md`, which these tests read.

mod support;

use firstfill::base::units::{CO2_G_PER_MOL, MEQ_PER_DKH};
use firstfill::chemistry::still_water::StillWater;
use firstfill::chemistry::{activity, ammonia, constants, nitrous_acid};
use support::check::Check;
use support::table::Table;

#[test]
fn carbonate_constants_agree_with_plummer_and_busenberg_and_two_libraries() {
    let table = Table::read("co2_constants");
    let mut same = Check::of("Acidity of carbonic acid, pK_1 and pK_2, 15 to 30 °C");
    let mut sea = Check::of("pK_1, pK_2 and pK_w, a seawater library, 15 to 30 °C");
    let mut water = Check::of("Ion product of water, pK_w, 15 to 30 °C");
    let columns = ["t_c", "pk1_pb82", "pk2_pb82", "pkw_phreeqc"];
    for [t, first, second, product] in table.numbers(columns) {
        same.see(constants::pk1(t) - first, t);
        same.see(constants::pk2(t) - second, t);
        water.see(constants::pkw(t) - product, t);
    }
    for [t, first, second, product] in table.numbers(["t_c", "pk1_pyco2", "pk2_pyco2", "pkw_pyco2"])
    {
        sea.see(constants::pk1(t) - first, t);
        sea.see(constants::pk2(t) - second, t);
        sea.see(constants::pkw(t) - product, t);
    }
    same.holds(2 * 16);
    sea.holds(3 * 16);
    water.holds(16);
}

#[test]
fn free_ammonia_agrees_with_emerson_and_five_geochemical_databases() {
    let table = Table::read("ammonia_fraction");
    let mut same = Check::of("Free share of ammonia, pH 6 to 9, 15 to 30 °C");
    let mut near = Check::of("Free share of ammonia, three geochemical databases");
    let mut far = Check::of("Free share of ammonia, two older databases");
    let columns = [
        "t_c",
        "ph",
        "emerson75",
        "phreeqc",
        "wateq4f",
        "Amm",
        "minteq_v4",
        "llnl",
    ];
    for [t, ph, emerson, phreeqc, wateq, amm, minteq, llnl] in table.numbers(columns) {
        let found = ammonia::free_share(t, ph);
        same.see_share(found, emerson, (t, ph));
        for database in [phreeqc, wateq, amm] {
            near.see_share(found, database, (t, ph));
        }
        for database in [minteq, llnl] {
            far.see_share(found, database, (t, ph));
        }
    }
    let rows = table.len();
    assert!(rows >= 60);
    same.holds(rows);
    near.holds(3 * rows);
    far.holds(2 * rows);
}

#[test]
fn free_ammonia_is_the_percentage_of_the_printed_tables() {
    // per cent of total ammonia at 0, 5, … 30 °C
    let printed = [
        (
            7.0,
            ["0.082", "0.12", "0.19", "0.27", "0.40", "0.57", "0.80"],
        ),
        (8.0, ["0.82", "1.2", "1.8", "2.7", "3.8", "5.4", "7.5"]),
    ];
    let mut check = Check::of("Free share of ammonia, printed tables, 0 to 30 °C");
    for (ph, shares) in printed {
        for (step, share) in shares.into_iter().enumerate() {
            let t = 5.0 * step as f64;
            let percent = 100.0 * ammonia::free_share(t, ph);
            check.see(support::check::digits_apart(percent, share), (t, ph));
        }
    }
    check.holds(14);
}

#[test]
fn a_misprint_of_the_ammonia_formula_would_be_found_out() {
    let mut worst: f64 = 0.0;
    for [t, ph, emerson] in Table::read("ammonia_fraction").numbers(["t_c", "ph", "emerson75"]) {
        let misprinted = 0.09018 + 2727.92 / (t + 273.2);
        let share = 1.0 / (1.0 + 10f64.powf(misprinted - ph));
        worst = worst.max((share / emerson - 1.0).abs());
    }
    // ten thousand times what is allowed
    assert!(worst > 1e4 * 1e-7, "{worst}");
}

#[test]
fn nitrous_acid_agrees_with_anthonisen_and_lies_near_the_handbooks() {
    let mut form = Check::of("Nitrous acid beside nitrite, pH 6 to 8, 15 to 30 °C");
    for t in [15.0, 20.0, 25.0, 30.0] {
        for ph in [6.0, 6.5, 7.0, 7.5, 8.0] {
            // the published form: HNO2-N = NO2-N/(K·10^pH), T from 273
            let published = 1.0 / (f64::exp(-2300.0 / (273.0 + t)) * 10f64.powf(ph));
            let found = 1.0 / (1.0 + nitrous_acid::acidity(t) * 10f64.powf(ph));
            form.see_share(found, published, (t, ph));
        }
    }
    form.holds(20);
    let mut handbook = Check::of("Acidity of nitrous acid at 25 °C, pK");
    for pk in [3.25, 3.15] {
        handbook.see(-nitrous_acid::acidity(25.0).log10() - pk, pk);
    }
    handbook.holds(2);
}

fn water(t_c: f64, alkalinity_meq_per_l: f64, ionic_strength_mol_per_l: f64) -> StillWater {
    StillWater {
        t_c,
        ionic_strength_mol_per_l,
        alkalinity_meq_per_l,
    }
}

fn ph_at_co2(t_c: f64, alkalinity: f64, co2_mg_per_l: f64, ionic: f64) -> f64 {
    let water = water(t_c, alkalinity, ionic);
    let carbon = water.carbon_at_co2(co2_mg_per_l);
    let (ph, co2) = water.ph_and_co2(carbon);
    let back = co2 / co2_mg_per_l - 1.0;
    assert!(back.abs() < 1e-9, "carbon found its CO2");
    ph
}

/// Ionic strength of water whose alkalinity stands beside sodium alone, mol/L; of strong acid where
/// it is below zero.
fn beside_sodium(alkalinity: f64) -> f64 {
    activity::ionic_strength_mol_per_l(0.0, alkalinity.abs())
}

/// The same beside calcium alone.
fn beside_calcium(alkalinity: f64) -> f64 {
    activity::ionic_strength_mol_per_l(alkalinity, alkalinity)
}

#[test]
fn ph_from_alkalinity_and_carbon_dioxide_agrees_with_activity() {
    let table = Table::read("ph_alk_co2");
    let mut same = Check::of("pH from alkalinity and CO2, the same equations");
    let mut sodium = Check::of("pH from alkalinity and CO2, sodium bicarbonate water");
    let mut calcium = Check::of("pH from alkalinity and CO2, calcium bicarbonate water");
    let mut gassed = Check::of("pH from alkalinity and CO2, the same with CO2 at 10 mg/L and up");
    let columns = [
        "t_c",
        "alk_meq",
        "co2_mgl",
        "ph_davies_na",
        "ph_davies_ca",
        "ph_phreeqc_na",
        "ph_phreeqc_ca",
    ];
    for [t, alk, co2, davies_na, davies_ca, na, ca] in table.numbers(columns) {
        let at = (t, alk, co2);
        let found = ph_at_co2(t, alk, co2, beside_sodium(alk));
        same.see(found - davies_na, at);
        sodium.see(found - na, at);
        let found = ph_at_co2(t, alk, co2, beside_calcium(alk));
        same.see(found - davies_ca, at);
        calcium.see(found - ca, at);
        if co2 >= 10.0 {
            gassed.see(found - ca, at);
        }
    }
    same.holds(2 * 96);
    sodium.holds(96);
    calcium.holds(96);
    gassed.holds(72);
}

#[test]
fn ph_from_alkalinity_and_carbon_dioxide_agrees_without_activity() {
    let table = Table::read("ph_alk_co2");
    let mut ideal = Check::of("pH from alkalinity and CO2, without activity");
    let mut sea = Check::of("pH from alkalinity and CO2, without activity, a seawater library");
    let columns = ["t_c", "alk_meq", "co2_mgl", "ph_ideal", "ph_pyco2"];
    for [t, alk, co2, formula, library] in table.numbers(columns) {
        let found = ph_at_co2(t, alk, co2, 0.0);
        ideal.see(found - formula, (t, alk, co2));
        sea.see(found - library, (t, alk, co2));
    }
    ideal.holds(96);
    sea.holds(96);
}

#[test]
fn the_trades_chart_of_ph_and_hardness_reads_low_by_a_known_amount() {
    // CO2 = 3·KH·10^(7 − pH), as printed on many a chart; with activity, for gassed water
    let mut chart = Check::of("pH from alkalinity and CO2, the trade's chart");
    let columns = ["t_c", "alk_meq", "co2_mgl", "ph_kh_rule"];
    for [t, alk, co2, rule] in Table::read("ph_alk_co2").numbers(columns) {
        if co2 >= 10.0 {
            let above = ph_at_co2(t, alk, co2, beside_sodium(alk)) - rule;
            assert!(above > 0.0, "{t} °C, {alk} meq/L: {above}");
            chart.see(above, (t, alk, co2));
        }
    }
    chart.holds(72);
}

#[test]
fn ph_from_alkalinity_and_carbon_agrees_also_where_alkalinity_is_below_zero() {
    let table = Table::read("ph_alk_dic");
    let mut ph_check = Check::of("pH from alkalinity and inorganic carbon, −0.1 meq/L and up");
    let mut co2_check = Check::of("CO2 from alkalinity and inorganic carbon");
    let mut sea_ph = Check::of("pH from alkalinity and carbon, without activity");
    let mut sea_co2 = Check::of("CO2 from alkalinity and carbon, without activity");
    let columns = [
        "t_c",
        "alk_meq",
        "dic_mmol",
        "ph_phreeqc_na",
        "co2_phreeqc_na_mgl",
        "ph_pyco2",
        "co2_pyco2_mgl",
    ];
    let rows = table.numbers(columns);
    for [t, alk, dic, ph, co2, ideal_ph, ideal_co2] in &rows {
        let at = (t, alk, dic);
        let (found_ph, found_co2) = water(*t, *alk, beside_sodium(*alk)).ph_and_co2(*dic);
        ph_check.see(found_ph - ph, at);
        co2_check.see_share(found_co2, *co2, at);
        let (found_ph, found_co2) = water(*t, *alk, 0.0).ph_and_co2(*dic);
        sea_ph.see(found_ph - ideal_ph, at);
        sea_co2.see_share(found_co2, *ideal_co2, at);
    }
    assert!(rows.iter().any(|row| row[1] < 0.0));
    for check in [ph_check, co2_check, sea_ph, sea_co2] {
        check.holds(rows.len());
    }
}

#[test]
fn ph_of_calcium_water_agrees_until_chalk_would_fall_out() {
    let table = Table::read("ph_alk_dic");
    let mut all = Check::of("pH from alkalinity and carbon, calcium bicarbonate water");
    let mut tanks = Check::of("pH from alkalinity and carbon, the same below pH 7.5");
    let rows = table.numbers(["t_c", "alk_meq", "dic_mmol", "ph_phreeqc_ca"]);
    let mut below = 0;
    for [t, alk, dic, ph] in &rows {
        let (found, _) = water(*t, *alk, beside_calcium(*alk)).ph_and_co2(*dic);
        all.see(found - ph, (t, alk, dic));
        if *ph < 7.5 {
            tanks.see(found - ph, (t, alk, dic));
            below += 1;
        }
    }
    all.holds(rows.len());
    assert!(below > 20, "{below}");
    tanks.holds(below);
}

#[test]
fn the_same_rule_stands_behind_chart_and_formula() {
    // CO2 = K·KH·10^(7 − pH) without activity: 3.53 at 25 °C and 3.78 at 20 °C
    let mut check = Check::of("CO2 per degree of hardness at pH 7, without activity");
    for (t, printed) in [(25.0, 3.53), (20.0, 3.78)] {
        let water = water(t, MEQ_PER_DKH, 0.0);
        let (_, co2) = water.ph_and_co2(water.carbon_at_ph(7.0));
        let by_hand = MEQ_PER_DKH * CO2_G_PER_MOL * 10f64.powf(constants::pk1(t) - 7.0);
        check.see(co2 - printed, t);
        check.see(co2 - by_hand, t);
    }
    check.holds(4);
}
