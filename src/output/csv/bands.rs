//! `bands.csv`: between which values the plausible tanks lie, day by day; by the hour on the days that
//! are drawn.

use crate::analysis::charted::{QUANTITIES, Quantity};
use crate::analysis::ensemble::bands::{Band, Bands};
use crate::analysis::ensemble::days::Of;
use crate::base::clock::{DAY, HOUR};
use crate::output::number::decimal_day;

use super::{Head, NotANumber, Row, Table};

const FILE: &str = "bands.csv";

/// A row per day and number of the day, then a row per hour of the drawn days.
pub fn table(bands: &Bands) -> Result<Table, NotANumber> {
    let mut rows = Vec::new();
    for day in bands.days() {
        for quantity in QUANTITIES {
            for of in Of::ALL {
                if let Some(band) = bands.of_day(day, quantity, of) {
                    let name = format!("{}_{}", quantity.name, of.ending());
                    rows.push(row(day * DAY, &name, quantity, band)?);
                }
            }
        }
    }
    for &day in bands.drawn_days() {
        for quantity in QUANTITIES {
            rows.extend(hours(bands, day, quantity)?);
        }
    }
    Ok(Table {
        file: FILE,
        heads: heads(),
        rows,
    })
}

/// The hours of a drawn day, from the one at which the tank was full.
fn hours(bands: &Bands, day: u32, quantity: Quantity) -> Result<Vec<Row>, NotANumber> {
    let hours = bands.of_hours(day, quantity).into_iter().flatten();
    let full = hours
        .zip(0..)
        .filter(|(band, _)| band.iter().all(|value| !value.is_nan()));
    full.map(|(band, hour)| row(day * DAY + hour * HOUR, quantity.name, quantity, &band))
        .collect()
}

fn row(minute: u32, name: &str, quantity: Quantity, band: &Band) -> Result<Row, NotANumber> {
    let mut row = Row::of([decimal_day(minute).as_str(), name, quantity.unit]);
    for &value in band {
        row.number(FILE, name, minute, f64::from(value))?;
    }
    Ok(row)
}

fn heads() -> Vec<Head> {
    let mut heads = vec![
        Head::plain(
            "day",
            "number of the day; with a fraction, an hour of a day that is drawn",
            "clock of the run",
        ),
        Head::plain(
            "quantity",
            "a column of daily.csv, or of series.csv where hours are told",
            "as there, of every plausible tank",
        ),
        Head::plain("unit", "unit of the five numbers", "that of the quantity"),
    ];
    let points = [
        ("p05", "5 of 100 plausible tanks lie below"),
        ("p25", "25 of 100 lie below"),
        ("p50", "half of them lie below"),
        ("p75", "75 of 100 lie below"),
        ("p95", "95 of 100 lie below"),
    ];
    let derived = "quantile over the members that did not fail, straight between neighbours";
    heads.extend(points.map(|(name, meaning)| Head::plain(name, meaning, derived)));
    heads
}
