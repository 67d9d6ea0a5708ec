//! Units: the same tank, written in other ones, is the same tank.

use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;
use firstfill::scenario;

/// An invented tank, a fortnight long.
const METRIC: &str = r#"
length = 13
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
hardscape = "3 L"
temperature = "24.5 °C"
[room]
temperature = "21 °C"
altitude = "300 m"
[soil]
kind = "medium"
amount = "9 L"
[water.tap]
alkalinity = "4 dKH"
hardness = "7 dGH"
nitrate = "9 mg NO3/L"
phosphate = "0.3 mg PO4/L"
potassium = "2 mg K/L"
chloride = "25 mg/L"
temperature = "16 °C"
[changes]
early = { days = "1..13", every = 2, share = "50 %" }
[light]
on = "11:30..18:30"
at_soil = "60 µmol/m²/s"
[gas]
on = "09:30..17:30"
rate = "2.4 g/day"
[air]
on = "20:00..08:00"
flow = "1 L/min"
[plants]
stems = { cover = "40 %", density = "30 g/m²", grown = "out of water" }
[doses]
weekly = { days = "8..13", every = 7, potassium = "3 mg K/L", iron = "0.05 mg/L" }
[stock]
first = { day = 10, kind = "fish", count = 6, each = "0.5 g", feed = "2 %/day" }
"#;

/// Each line of it that has another unit, and the same in that one: by the exact inch and US gallon,
/// atomic masses, and the German degree of 0.35665 meq/L. Seventeen digits, so that only the last
/// is rounded.
const OTHERWISE: [(&str, &str); 22] = [
    (
        "\"60 x 30 x 36 cm\"",
        "\"23.62204724409449 x 11.811023622047244 x 14.173228346456693 in\"",
    ),
    ("\"33 cm\"", "\"12.992125984251969 in\""),
    ("\"3 L\"", "\"0.7925161570744453 US gal\""),
    ("\"24.5 °C\"", "\"76.1 °F\""),
    ("\"21 °C\"", "\"69.8 °F\""),
    ("\"300 m\"", "\"30000 cm\""),
    ("\"9 L\"", "\"2.377548471223336 US gal\""),
    ("\"4 dKH\"", "\"71.3913438 mg CaCO3/L\""),
    ("\"7 dGH\"", "\"124.93485165 mg CaCO3/L\""),
    ("\"9 mg NO3/L\"", "\"2.0331430230307723 mg N/L\""),
    ("\"0.3 mg PO4/L\"", "\"0.09784352953564283 mg P/L\""),
    ("\"2 mg K/L\"", "\"2.409202516752775 mg K2O/L\""),
    ("\"16 °C\"", "\"60.8 °F\""),
    ("\"2.4 g/day\"", "\"2400 mg/day\""),
    ("\"1 L/min\"", "\"60 L/h\""),
    ("\"30 g/m²\"", "\"3 mg/cm²\""),
    ("\"3 mg K/L\"", "\"0.07673026753286613 mmol/L\""),
    ("\"0.05 mg/L\"", "\"50 µg/L\""),
    ("\"0.5 g\"", "\"500 mg\""),
    ("\"2 %/day\"", "\"0.02 /day\""),
    ("\"09:30..17:30\"", "{ from = \"09:30\", for = \"8 h\" }"),
    (
        "\"20:00..08:00\"",
        "{ from = \"20:00\", for = \"720 min\" }",
    ),
];

fn run_of(text: &str) -> RunResult {
    match scenario::read_text("tank.toml", text) {
        Ok(loaded) => run(&loaded.case.input).unwrap(),
        Err(problems) => panic!("{}", problems.render(false)),
    }
}

/// What is compared, as a share of the largest value in the run.
const SEEN: [fn(&Reading) -> f64; 12] = [
    |r| r.tan_mg_n_per_l,
    |r| r.nitrite_mg_n_per_l,
    |r| r.nitrate_mg_n_per_l,
    |r| r.phosphate_mg_p_per_l,
    |r| r.potassium_mg_per_l,
    |r| r.oxygen_mg_per_l,
    |r| r.co2_mg_per_l,
    |r| r.ph,
    |r| r.alkalinity_meq_per_l,
    |r| r.hardness_meq_per_l,
    |r| r.temperature_c,
    |r| r.plants_g,
];

/// The last digit of a number is rounded when it is written in another unit (1e-16); the tank amplifies
/// that by what grows in it, e-fold in a day or two over a fortnight: a thousandfold and more.
const ROUNDING: f64 = 1e-12;

#[test]
fn the_same_tank_written_in_other_units_gives_the_same_results() {
    let mut text = METRIC.to_string();
    for (metric, other) in OTHERWISE {
        assert_eq!(text.matches(metric).count(), 1, "{metric}");
        text = text.replace(metric, other);
    }
    let (one, two) = (run_of(METRIC), run_of(&text));
    assert_eq!(one.readings.len(), two.readings.len());
    let mut worst = 0f64;
    for value in SEEN {
        let size = one
            .readings
            .iter()
            .map(value)
            .fold(0.0, |most: f64, x| most.max(x.abs()));
        for (a, b) in one.readings.iter().zip(&two.readings) {
            let apart = (value(a) - value(b)).abs() / size;
            worst = worst.max(apart);
            assert!(
                apart <= ROUNDING,
                "{apart:e} of {size} at minute {}",
                a.minute
            );
        }
    }
    println!("largest difference {worst:.1e}");
    // the digits do matter: a foot for a yard would be seen
    let wrong = METRIC.replace("\"33 cm\"", "\"33.0001 cm\"");
    let end = |run: &RunResult| run.readings.last().unwrap().hardness_meq_per_l.to_bits();
    assert_ne!(end(&run_of(&wrong)), end(&one));
}
