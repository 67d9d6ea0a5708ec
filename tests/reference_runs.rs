//! The seventeen reference runs, every quantity three times a day for eight weeks.
//!
//! Source: an independent implementation of the same specification, LSODA at rtol 1e-8
//! (reference library SciPy); inputs, summaries and trajectories in `tests/reference`.
//! Each value is held to 1 %, the error of a step as published for tanks of this kind, or one unit of
//! its last printed digit, whichever is largest; each quantity's largest difference, as a share of
//! its highest value, to what `tests/README.md` says.

mod support;

use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;
use support::check::Check;
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

/// The row of a day, by the heads of its columns.
struct Row<'a> {
    headers: &'a [String],
    cells: &'a [String],
}

impl Row<'_> {
    fn number(&self, header: &str) -> f64 {
        let place = self.headers.iter().position(|h| h == header).unwrap();
        self.cells[place].parse().unwrap()
    }
    /// What a column of `COLUMNS` should read.
    fn expected(&self, header: &str) -> f64 {
        match header {
            // the table gives the submersed tissue's own nitrogen; shed tissue holds Q0 = 30 mg/g
            "N of plants" => self.number("NB") + 30.0 * self.number("E"),
            header => self.number(header),
        }
    }
}

/// Highest value and largest difference of each column over a run.
#[derive(Default)]
struct Spans([(f64, f64); COLUMNS.len()]);

impl Spans {
    fn see(&mut self, place: usize, found: f64, expected: f64) {
        let (highest, apart) = &mut self.0[place];
        *highest = highest.max(expected.abs());
        *apart = apart.max((found - expected).abs());
    }
    /// Holds the differences, as shares of the highest values, against the page.
    fn hold(&self, compared: &'static str) {
        let mut check = Check::of(compared);
        for ((header, ..), (highest, apart)) in COLUMNS.iter().zip(self.0) {
            // what is nothing all along has no share
            if highest > 0.0 {
                check.see(apart / highest, header);
            }
        }
        let count = check.count();
        assert!(count >= 18, "{count} quantities that are not nothing");
        check.holds(count);
    }
}

/// Asserts that each value of a day is as expected, and returns how many were compared.
fn assert_day(row: &Row, reading: &Reading, spans: &mut Spans) -> usize {
    for (place, (header, value, step_error)) in COLUMNS.into_iter().enumerate() {
        let (found, expected) = (value(reading), row.expected(header));
        let allowed = (0.01 * expected.abs())
            .max(step_error)
            .max(printed_digit(expected));
        assert_near(header, reading, found, expected, allowed);
        spans.see(place, found, expected);
    }
    for (header, found) in [
        ("B", reading.plants_g - row.number("E")),
        ("DF", reading.detritus_g - row.number("DS")),
        ("DNF", reading.detritus_mg_n - row.number("DNS")),
    ] {
        let expected = row.number(header);
        let allowed = (0.01 * expected.abs()).max(2e-5);
        assert_near(header, reading, found, expected, allowed);
    }
    COLUMNS.len()
}

fn assert_near(header: &str, reading: &Reading, found: f64, expected: f64, allowed: f64) {
    assert!(
        (found - expected).abs() <= allowed,
        "{header} on day {:.3}: {found}, not {expected}",
        f64::from(reading.minute) / 1440.0
    );
}

fn assert_trajectory(name: &str, compared: &'static str) {
    let result = run(&reference::input(name)).unwrap();
    let (headers, rows) = trajectories();
    let mut spans = Spans::default();
    let mut count = 0;
    for cells in rows.iter().filter(|row| row[0] == name) {
        let row = Row {
            headers: &headers,
            cells,
        };
        count += assert_day(&row, at(&result, row.number("day")), &mut spans);
    }
    assert_eq!(count, 56 * 3 * COLUMNS.len(), "the table has every day");
    spans.hold(compared);
}

macro_rules! reference_runs {
    ($($name:ident: $compared:literal),* $(,)?) => {
        $(#[test]
        fn $name() {
            assert_trajectory(stringify!($name), $compared);
        })*

        #[test]
        fn every_reference_run_has_its_test() {
            assert_eq!(reference::names(), [$(stringify!($name)),*]);
        }
    };
}

reference_runs! {
    bare_no_change: "Reference run: no plants, no water changes",
    bare_no_change_seed100: "Reference run: no plants, no changes, seeded a hundredfold",
    bare_std: "Reference run: no plants, usual changes",
    base: "Reference run: planted, gas, changes",
    base_seed100: "Reference run: planted, seeded a hundredfold",
    base_night_air: "Reference run: planted, air by night",
    dense: "Reference run: densely planted",
    dense_still: "Reference run: densely planted, still surface",
    no_gas: "Reference run: planted, no gas",
    weekly: "Reference run: planted, weekly changes",
    no_change: "Reference run: planted, no changes",
    soft_bare: "Reference run: no plants, soft water",
    acid_soil_bare: "Reference run: no plants, a soil that only takes",
    base_fish: "Reference run: planted, with fish",
    dark_start: "Reference run: four weeks in the dark first",
    dry_start: "Reference run: started dry",
    base_power_cut: "Reference run: planted, a power cut",
}
