//! Chemistry of water at rest against tables of reference libraries, over their whole grids.
//!
//! Each table names library and version in its first lines. Tolerances: where the table holds the
//! same published formula, its last printed digit; where a library uses another fit, the
//! difference of the two fits, with the reason beside it.

use firstfill::chemistry::air::vapour_pressure_atm;
use firstfill::chemistry::carbonate::StillWater;
use firstfill::chemistry::{activity, ammonia, constants, solubility};

/// A table of numbers with named columns.
struct Table {
    columns: Vec<String>,
    rows: Vec<csv::StringRecord>,
}

impl Table {
    fn read(name: &str) -> Table {
        let path = format!("tests/reference/{name}.csv");
        let mut reader = csv::ReaderBuilder::new()
            .comment(Some(b'#'))
            .from_path(&path)
            .unwrap();
        Table {
            columns: reader.headers().unwrap().iter().map(String::from).collect(),
            rows: reader.records().map(|row| row.unwrap()).collect(),
        }
    }
    /// The numbers of some columns, row by row; rows where one is missing are left out.
    fn numbers<const N: usize>(&self, columns: [&str; N]) -> Vec<[f64; N]> {
        let places = columns.map(|column| {
            self.columns
                .iter()
                .position(|c| c == column)
                .unwrap_or_else(|| panic!("no column {column}"))
        });
        let number = |row: &csv::StringRecord, place: usize| row[place].parse::<f64>().ok();
        self.rows
            .iter()
            .filter_map(|row| {
                let found = places.map(|place| number(row, place));
                found
                    .iter()
                    .all(Option::is_some)
                    .then(|| found.map(Option::unwrap))
            })
            .collect()
    }
}

/// The largest difference seen, with where it was.
struct Worst {
    what: &'static str,
    size: f64,
    at: String,
    count: usize,
}

impl Worst {
    fn of(what: &'static str) -> Worst {
        Worst {
            what,
            size: 0.0,
            at: String::new(),
            count: 0,
        }
    }
    fn see(&mut self, difference: f64, at: impl std::fmt::Debug) {
        self.count += 1;
        // written so that a NaN is the worst
        if !(difference.abs() <= self.size) {
            self.size = difference.abs();
            self.at = format!("{at:?}");
        }
    }
    fn assert_below(&self, tolerance: f64, count: usize) {
        println!(
            "{}: at most {:.2e} over {} values, at {}",
            self.what, self.size, self.count, self.at
        );
        assert!(
            self.size <= tolerance,
            "{}: {} at {}",
            self.what,
            self.size,
            self.at
        );
        assert_eq!(self.count, count, "{}: values compared", self.what);
    }
}

#[test]
fn oxygen_saturation_agrees_with_standard_methods_and_three_libraries() {
    // gsw 3.6.23 (Garcia & Gordon fit), PHREEQC 1.1.1 (phreeqc.dat), Benson & Krause 1984 as in
    // Standard Methods 4500-O, and its printed table from memory.
    let table = Table::read("oxygen_saturation");
    let mut same = Worst::of("Benson & Krause, mg/L");
    let mut printed = Worst::of("printed table, mg/L");
    let mut gsw = Worst::of("gsw, mg/L");
    for [t, formula, gsw_mgl] in table.numbers(["t_c", "bk84_mgl", "gsw_mgl"]) {
        let found = solubility::oxygen_saturation_mg_per_l(t, 1.0);
        same.see(found - formula, t);
        gsw.see(found - gsw_mgl, t);
    }
    for [t, line] in table.numbers(["t_c", "sm_table_mgl"]) {
        printed.see(solubility::oxygen_saturation_mg_per_l(t, 1.0) - line, t);
    }
    // the same formula: the table's eight digits
    same.assert_below(5e-7, 36);
    // printed to 0.001, and rounded from the formula with slightly other atomic masses
    printed.assert_below(1.5e-3, 36);
    // another fit to the same measurements: they differ by up to 0.0015 mg/L
    gsw.assert_below(2e-3, 36);
    let mut phreeqc = Worst::of("PHREEQC, share");
    for [t, mgl] in table.numbers(["t_c", "phreeqc_mgl"]) {
        phreeqc.see(
            solubility::oxygen_saturation_mg_per_l(t, 1.0) / mgl - 1.0,
            t,
        );
    }
    // another solubility constant, fitted to other data: half a percent in cold water
    phreeqc.assert_below(8e-3, 36);
}

#[test]
fn carbonate_constants_agree_with_plummer_and_busenberg_and_two_libraries() {
    // Plummer & Busenberg 1982 recomputed; PHREEQC 1.1.1; PyCO2SYS 1.8.3.4 (Millero 1979, S = 0);
    // Weiss 1974
    let table = Table::read("co2_constants");
    let rows = table.rows.len();
    let mut same = Worst::of("log K of Plummer & Busenberg");
    let mut weiss = Worst::of("log K_H of Weiss");
    for [t, k0, w74, p1, p2] in
        table.numbers(["t_c", "logk0_pb82", "logk0_weiss74", "pk1_pb82", "pk2_pb82"])
    {
        let log_k0 = constants::co2_solubility_mol_per_kg_atm(t).log10();
        same.see(log_k0 - k0, t);
        same.see(constants::pk1(t) - p1, t);
        same.see(constants::pk2(t) - p2, t);
        weiss.see(log_k0 - w74, t);
    }
    // the same formula: the table's eight digits
    same.assert_below(5e-7, 3 * rows);
    // another fit: 0.1 % of solubility is 4e-4 in the logarithm
    weiss.assert_below(1e-3, rows);
    let mut pyco2 = Worst::of("pK of PyCO2SYS");
    let mut water = Worst::of("pK_w of PHREEQC");
    for [t, p1, p2, pw, pw_phreeqc] in
        table.numbers(["t_c", "pk1_pyco2", "pk2_pyco2", "pkw_pyco2", "pkw_phreeqc"])
    {
        pyco2.see(constants::pk1(t) - p1, t);
        pyco2.see(constants::pk2(t) - p2, t);
        pyco2.see(constants::pkw(t) - pw, t);
        water.see(constants::pkw(t) - pw_phreeqc, t);
    }
    // seawater fits taken to zero salinity: 0.002 in pK, half a percent in K
    pyco2.assert_below(3e-3, 3 * rows);
    // the same expression
    water.assert_below(1e-6, rows);
}

#[test]
fn carbon_dioxide_in_equilibrium_with_air_agrees_with_two_libraries() {
    // Plummer & Busenberg 1982 and Weiss 1974 recomputed, PHREEQC 1.1.1; 420 ppm of dry air
    let table = Table::read("co2_constants");
    let rows = table.rows.len();
    let mut same = Worst::of("Plummer & Busenberg, share");
    let mut others = Worst::of("Weiss and PHREEQC, share");
    let mut vapour = Worst::of("vapour pressure, share");
    for [t, wet, weiss, phreeqc, p_w] in table.numbers([
        "t_c",
        "eq_pb82_wet_mgl",
        "eq_weiss_wet_mgl",
        "eq_phreeqc_wet_mgl",
        "pwv_atm",
    ]) {
        let found = solubility::co2_saturation_mg_per_l(t, 1.0, 420.0);
        same.see(found / wet - 1.0, t);
        others.see(found / weiss - 1.0, t);
        others.see(found / phreeqc - 1.0, t);
        vapour.see(vapour_pressure_atm(t) / p_w - 1.0, t);
    }
    // the table's vapour pressure is another formula, some 0.1 % of 3 % of an atmosphere, and its
    // molar mass of CO2 has another last digit
    same.assert_below(1e-4, rows);
    // other fits of the solubility, 0.2 % apart
    others.assert_below(3e-3, 2 * rows);
    // the table's formula is that of seawater work; ours that of Standard Methods
    vapour.assert_below(3e-3, rows);
}

#[test]
fn free_ammonia_agrees_with_emerson_and_a_geochemical_database() {
    // Emerson et al. 1975 recomputed; PHREEQC 1.1.1 with phreeqc.dat, at an ionic strength of 1e-6
    let table = Table::read("ammonia_fraction");
    let rows = table.rows.len();
    let mut same = Worst::of("Emerson, share");
    let mut phreeqc = Worst::of("PHREEQC, share");
    for [t, ph, emerson, database] in table.numbers(["t_c", "ph", "emerson75", "phreeqc"]) {
        let found = ammonia::free_share(t, ph);
        same.see(found / emerson - 1.0, (t, ph));
        phreeqc.see(found / database - 1.0, (t, ph));
    }
    // the same formula: the table's eight digits
    same.assert_below(1e-7, rows);
    // another fit: 0.15 % at the warm end, beyond the 30 °C of Emerson's measurements
    phreeqc.assert_below(2e-3, rows);
    assert!(rows >= 60);
}

#[test]
fn ph_from_alkalinity_and_carbon_dioxide_agrees_with_two_geochemical_programs() {
    // PHREEQC 1.1.1 (phreeqc.dat, charge balance) and PyCO2SYS 1.8.3.4 (no activity coefficients)
    let table = Table::read("ph_alk_co2");
    let columns = [
        "t_c",
        "alk_meq",
        "co2_mgl",
        "ionic_strength_na",
        "ph_phreeqc_na",
        "ph_davies_na",
        "ph_pyco2",
    ];
    let rows = table.numbers(columns);
    let mut same = Worst::of("Plummer & Busenberg with Davies, pH");
    let mut phreeqc = Worst::of("PHREEQC, pH");
    let mut pyco2 = Worst::of("PyCO2SYS, pH");
    for [t, alk, co2, i, ph, davies, ideal] in &rows {
        let found = ph_at_co2(*t, *alk, *co2, *i);
        same.see(found - davies, (t, alk, co2));
        phreeqc.see(found - ph, (t, alk, co2));
        let no_activity = ph_at_co2(*t, *alk, *co2, 0.0);
        pyco2.see(no_activity - ideal, (t, alk, co2));
    }
    // the same equations, but with their own ionic strength, which is up to 0.4 % above the one of
    // PHREEQC used here (it pairs ions); worked out anew with it, 1.6e-5 remain
    same.assert_below(1e-4, rows.len());
    // PHREEQC pairs some sodium with bicarbonate and carbonate, which Davies alone does not
    phreeqc.assert_below(1.5e-3, rows.len());
    // other constants: 0.001 in pK
    pyco2.assert_below(1e-3, rows.len());
    assert!(rows.len() >= 90);
}

fn ph_at_co2(t_c: f64, alkalinity_meq_per_l: f64, co2_mg_per_l: f64, ionic: f64) -> f64 {
    let water = StillWater {
        t_c,
        ionic_strength_mol_per_l: ionic,
        alkalinity_meq_per_l,
    };
    let carbon = water.carbon_at_co2(co2_mg_per_l);
    let (ph, co2) = water.ph_and_co2(carbon);
    assert!(
        (co2 / co2_mg_per_l - 1.0).abs() < 1e-9,
        "carbon found its CO2"
    );
    ph
}

#[test]
fn ph_from_alkalinity_and_carbon_agrees_with_two_programs_also_below_zero() {
    // PHREEQC 1.1.1 and PyCO2SYS 1.8.3.4; alkalinity from -0.1 meq/L up, sodium bicarbonate water
    let table = Table::read("ph_alk_dic");
    let columns = [
        "t_c",
        "alk_meq",
        "dic_mmol",
        "ph_phreeqc_na",
        "ph_pyco2",
        "co2_phreeqc_na_mgl",
        "co2_pyco2_mgl",
    ];
    let rows = table.numbers(columns);
    let mut phreeqc = Worst::of("PHREEQC, pH");
    let mut phreeqc_co2 = Worst::of("PHREEQC, CO2, share");
    let mut pyco2 = Worst::of("PyCO2SYS, pH");
    let mut pyco2_co2 = Worst::of("PyCO2SYS, CO2, share");
    for [t, alk, dic, ph, ideal_ph, co2, ideal_co2] in &rows {
        let water = |ionic_strength_mol_per_l: f64| StillWater {
            t_c: *t,
            ionic_strength_mol_per_l,
            alkalinity_meq_per_l: *alk,
        };
        // sodium bicarbonate, or strong acid where alkalinity is negative
        let salt = activity::ionic_strength_mol_per_l(0.0, alk.abs());
        let (found_ph, found_co2) = water(salt).ph_and_co2(*dic);
        phreeqc.see(found_ph - ph, (t, alk, dic));
        phreeqc_co2.see(found_co2 / co2 - 1.0, (t, alk, dic));
        let (found_ph, found_co2) = water(0.0).ph_and_co2(*dic);
        pyco2.see(found_ph - ideal_ph, (t, alk, dic));
        pyco2_co2.see(found_co2 / ideal_co2 - 1.0, (t, alk, dic));
    }
    // PHREEQC pairs ions, which shows above 2 meq/L: 0.006 of pH, 0.7 % of CO2
    phreeqc.assert_below(8e-3, rows.len());
    phreeqc_co2.assert_below(9e-3, rows.len());
    // other constants, 0.001 in pK
    pyco2.assert_below(1e-3, rows.len());
    pyco2_co2.assert_below(2e-3, rows.len());
    assert!(rows.len() >= 90);
    assert!(rows.iter().any(|row| row[1] < 0.0));
}

#[test]
fn a_wrong_formula_would_be_found_out() {
    let mut worst = Worst::of("the misprint 2727.92 of one manual");
    for [t, ph, emerson] in Table::read("ammonia_fraction").numbers(["t_c", "ph", "emerson75"]) {
        let misprinted = 0.09018 + 2727.92 / (t + 273.2);
        worst.see(
            (1.0 / (1.0 + 10f64.powf(misprinted - ph))) / emerson - 1.0,
            (t, ph),
        );
    }
    assert!(worst.size > 2e-3, "{}", worst.size);
}
