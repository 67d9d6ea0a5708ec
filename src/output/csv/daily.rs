//! `daily.csv`: lowest, highest and mean of each day, and the hour of the lowest.

use crate::analysis::case::Case;
use crate::analysis::day_of::DayOf;
use crate::analysis::milestones::{Extreme, readings_of};
use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::result::{Reading, RunResult};
use crate::output::columns::Column;
use crate::output::when::iso_date;

use super::{Head, NotANumber, Row, Table};

const FILE: &str = "daily.csv";

/// One row per day.
pub fn table(run: &RunResult, case: &Case, columns: &[Column]) -> Result<Table, NotANumber> {
    let followed: Vec<&Column> = columns.iter().filter(|column| column.daily).collect();
    let days = (0..=run.input.last_day).map(|day| (day, readings_of(run, day)));
    let rows = days
        .filter(|(_, readings)| !readings.is_empty())
        .map(|(day, readings)| row(case, &followed, day, &readings))
        .collect::<Result<_, _>>()?;
    Ok(Table {
        file: FILE,
        heads: heads(&followed),
        rows,
    })
}

fn heads(followed: &[&Column]) -> Vec<Head> {
    let mut heads = vec![
        Head::plain("day", "number of the day", "clock of the run"),
        Head::plain(
            "date",
            "its date; empty without a start",
            "clock of the run",
        ),
    ];
    for column in followed {
        heads.extend(heads_of(column));
    }
    heads
}

fn heads_of(column: &Column) -> [Head; 4] {
    let ending = |ending: &str, words: &str, derived: &str| {
        Head::new(
            &format!("{}_{ending}", column.name),
            column.unit,
            &format!("{}: {words}", column.meaning),
            derived,
        )
    };
    let both = "all steps of the day, both sides of every event";
    let mut hour = ending("min_hour", "hour of the lowest", both);
    hour.unit = "h".into();
    [
        ending("min", "lowest of the day", both),
        ending("max", "highest of the day", both),
        ending(
            "mean",
            "mean of the day",
            "weighted by time, straight lines between steps",
        ),
        hour,
    ]
}

fn row(
    case: &Case,
    followed: &[&Column],
    day: u32,
    readings: &[&Reading],
) -> Result<Row, NotANumber> {
    let mut row = Row::of([day.to_string(), iso_date(case.filled_on, day)]);
    for column in followed {
        let value = |r: &Reading| column.of(r);
        let all = readings.iter().copied();
        let extremes = Extreme::lowest(all.clone(), value).zip(Extreme::highest(all, value));
        let Some((low, high)) = extremes else {
            continue;
        };
        let mean = mean(readings, value);
        for number in [low.value, high.value, mean, hour_in_day(low.minute, day)] {
            row.number(FILE, &column.name, day * DAY, number)?;
        }
    }
    Ok(row)
}

/// Hours since the midnight that opens the day; the closing midnight is 24.
fn hour_in_day(minute: u32, day: u32) -> f64 {
    TimeOfDay(minute - day * DAY).hours()
}

fn mean(readings: &[&Reading], value: impl Fn(&Reading) -> f64) -> f64 {
    let mut day = DayOf::opening(readings[0].minute, value(readings[0]));
    for reading in &readings[1..] {
        day.see(reading.minute, value(reading));
    }
    day.mean()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::output::columns;

    #[test]
    fn a_day_has_its_lowest_with_hour_its_highest_and_its_mean() {
        let example = Example::default();
        let table = table(
            &example.run(),
            &example.case(),
            &columns::of(&example.input()),
        )
        .unwrap();
        assert_eq!(table.rows.len(), 11);
        let at = |name: &str| {
            let place = table.heads.iter().position(|h| h.name == name).unwrap();
            &table.rows[2][place]
        };
        assert_eq!(at("date"), "2027-03-08");
        assert_eq!(
            (at("oxygen_mg_per_l_min"), at("oxygen_mg_per_l_min_hour")),
            ("4.6", "6")
        );
        assert_eq!(at("tan_mg_n_per_l_max"), "2");
        // one hourly point of 4.6 among 8.0, with straight lines to its neighbours: 8 − 3.4/24
        assert_eq!(at("oxygen_mg_per_l_mean"), "7.85833");
    }
}
