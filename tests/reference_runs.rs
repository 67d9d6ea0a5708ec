//! The seventeen reference runs, every quantity three times a day for eight weeks.
//!
//! Source: an independent implementation of the same specification, LSODA at rtol 1e-8
//! (reference library SciPy); inputs, summaries and trajectories in `tests/reference`.
//! Tolerance: 1 %, the error of a Heun step of 5 minutes on tanks of this kind, or one unit of the
//! last printed digit, whichever is largest.

mod support;

use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;
use support::reference;

/// What is compared: column of the table, reading, error of the step.
type Column = (&'static str, fn(&Reading) -> f64, f64);

/// Errors of the step: worst of nine tanks as published with the specification.
const COLUMNS: [Column; 24] = [
    ("TAN", |r| r.tan_mg_n_per_l, 1.9e-5),
    ("NO2", |r| r.nitrite_mg_n_per_l, 1.7e-4),
    ("NO3", |r| r.nitrate_mg_n_per_l, 0.0),
    ("PO4", |r| r.phosphate_mg_p_per_l, 0.0),
    ("K", |r| r.potassium_mg_per_l, 0.0),
    ("Fe", |r| r.iron_mg_per_l, 0.0),
    ("O2", |r| r.oxygen_mg_per_l, 7.6e-4),
    ("CO2", |r| r.co2_mg_per_l, 6.5e-3),
    ("pH", |r| r.ph, 3.8e-4),
    ("ALK", |r| r.alkalinity_meq_per_l, 0.0),
    ("DIC", |r| r.inorganic_carbon_mmol_per_l, 0.0),
    ("T", |r| r.temperature_c, 0.0),
    ("NH3", |r| r.free_ammonia_mg_n_per_l, 0.0),
    ("V", |r| r.volume_l, 0.0),
    ("NX", |r| r.soil_ammonium_mg_n, 0.0),
    ("NO", |r| r.soil_organic_n_mg, 0.0),
    ("PX", |r| r.soil_phosphorus_mg_p, 0.0),
    ("EH", |r| r.soil_acid_meq, 0.0),
    ("XA", |r| r.ammonia_oxidisers_mg_cod, 0.0),
    ("XN", |r| r.nitrite_oxidisers_mg_cod, 0.0),
    ("XK", |r| r.complete_oxidisers_mg_cod, 0.0),
    ("G", |r| r.algae_g_per_m2, 0.0),
    ("IND", |r| r.indicator_co2_mg_per_l, 0.0),
    ("N of plants", |r| r.plants_mg_n, 0.0),
];

fn trajectories() -> (Vec<String>, Vec<Vec<String>>) {
    let mut reader = csv::Reader::from_path("tests/reference/runs_trajectories.csv").unwrap();
    let headers = reader.headers().unwrap().iter().map(String::from).collect();
    let rows = reader
        .records()
        .map(|row| row.unwrap().iter().map(String::from).collect())
        .collect();
    (headers, rows)
}

/// One unit of the last printed digit of a value printed to six digits.
fn printed_digit(value: f64) -> f64 {
    if value == 0.0 {
        1e-12
    } else {
        10f64.powf(value.abs().log10().floor() - 5.0)
    }
}

fn at(result: &RunResult, day: f64) -> &Reading {
    let minute = (day * 1440.0).round() as u32;
    result
        .readings
        .iter()
        .rfind(|reading| reading.minute == minute)
        .unwrap()
}

fn assert_trajectory(name: &str) {
    let result = run(&reference::input(name)).unwrap();
    let (headers, rows) = trajectories();
    let column = |header: &str| headers.iter().position(|h| h == header).unwrap();
    let mut compared = 0;
    let mut worst = (0.0, String::new());
    for row in rows.iter().filter(|row| row[0] == name) {
        let day: f64 = row[1].parse().unwrap();
        let reading = at(&result, day);
        let number = |header: &str| -> f64 { row[column(header)].parse().unwrap() };
        for (header, value, step_error) in COLUMNS {
            let expected = match header {
                // the table gives the submersed tissue's own nitrogen; shed tissue holds Q0 = 30 mg/g
                "N of plants" => number("NB") + 30.0 * number("E"),
                header => number(header),
            };
            let found = value(reading);
            let allowed = (0.01 * expected.abs())
                .max(step_error)
                .max(printed_digit(expected));
            let share = (found - expected).abs() / allowed;
            if share > worst.0 {
                worst = (
                    share,
                    format!("{header} on day {day}: {found}, not {expected}"),
                );
            }
            compared += 1;
        }
        for (header, found) in [
            ("B", reading.plants_g - number("E")),
            ("DF", reading.detritus_g - number("DS")),
            ("DNF", reading.detritus_mg_n - number("DNS")),
        ] {
            let expected = number(header);
            assert!(
                (found - expected).abs() <= (0.01 * expected.abs()).max(2e-5),
                "{name}, {header} on day {day}: {found}, not {expected}"
            );
        }
    }
    assert_eq!(
        compared,
        56 * 3 * COLUMNS.len(),
        "{name}: the table has every day"
    );
    assert!(
        worst.0 <= 1.0,
        "{name}: {} ({:.2} of the tolerance)",
        worst.1,
        worst.0
    );
    println!(
        "{name}: largest share of the tolerance {:.3} ({})",
        worst.0, worst.1
    );
}

macro_rules! reference_runs {
    ($($name:ident),* $(,)?) => {
        $(#[test]
        fn $name() {
            assert_trajectory(stringify!($name));
        })*

        #[test]
        fn every_reference_run_has_its_test() {
            assert_eq!(reference::names(), [$(stringify!($name)),*]);
        }
    };
}

reference_runs! {
    bare_no_change,
    bare_no_change_seed100,
    bare_std,
    base,
    base_seed100,
    base_night_air,
    dense,
    dense_still,
    no_gas,
    weekly,
    no_change,
    soft_bare,
    acid_soil_bare,
    base_fish,
    dark_start,
    dry_start,
    base_power_cut,
}
