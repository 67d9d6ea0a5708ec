//! `series.csv`: the tank at even intervals.

use crate::analysis::case::Case;
use crate::engine::result::{Reading, RunResult, Side};
use crate::output::columns::{Column, Sample};
use crate::output::number::decimal_day;
use crate::output::when::iso_time;

use super::{Head, NotANumber, Table, cell};

const FILE: &str = "series.csv";

/// One row per interval; the first reading and the closing midnight are always there. Where
/// something happens at the instant of a row, the row shows the tank after it.
pub fn table(
    run: &RunResult,
    case: &Case,
    columns: &[Column],
    every_minutes: u32,
) -> Result<Table, NotANumber> {
    let shown = shown(run);
    let mut rows = Vec::new();
    let mut changed = Changed::default();
    for (at, reading) in shown.iter().enumerate() {
        changed.advance(run, reading.minute);
        let next = shown.get(at + 1);
        let last_of_its_minute = next.is_none_or(|next| next.minute != reading.minute);
        let due = reading.minute.is_multiple_of(every_minutes) || rows.is_empty() || next.is_none();
        if due && last_of_its_minute {
            rows.push(row(case, columns, &changed.sample(reading))?);
        }
    }
    Ok(Table {
        file: FILE,
        heads: heads(columns),
        rows,
    })
}

fn heads(columns: &[Column]) -> Vec<Head> {
    let mut heads = vec![
        Head::plain("day", "days since midnight of day 0", "clock of the run"),
        Head::plain(
            "time",
            "time of day; with a start, date and time",
            "clock of the run",
        ),
    ];
    heads.extend(
        columns
            .iter()
            .map(|c| Head::new(&c.name, c.unit, &c.meaning, c.derived)),
    );
    heads
}

fn row(case: &Case, columns: &[Column], sample: &Sample) -> Result<Vec<String>, NotANumber> {
    let minute = sample.reading.minute;
    let mut cells = vec![decimal_day(minute), iso_time(case.filled_on, minute)];
    for column in columns {
        cells.push(cell(FILE, &column.name, minute, column.value(sample))?);
    }
    Ok(cells)
}

/// Water changed since filling.
#[derive(Default)]
struct Changed {
    events_counted: usize,
    litres: f64,
}

impl Changed {
    fn advance(&mut self, run: &RunResult, minute: u32) {
        while let Some(event) = run.events.get(self.events_counted)
            && event.minute <= minute
        {
            self.litres += event.litres;
            self.events_counted += 1;
        }
    }
    fn sample<'a>(&self, reading: &'a Reading) -> Sample<'a> {
        Sample {
            reading,
            water_changed_l: self.litres,
        }
    }
}

/// Readings of the judged run, those inside steps too.
fn shown(run: &RunResult) -> Vec<&Reading> {
    if run.close_ups.is_empty() {
        return run.shown().iter().collect();
    }
    let end = run.shown().last().map_or(0, |reading| reading.minute);
    let mut seen = run.seen(0, end);
    // of the closing midnight only what belongs to the judged run
    seen.pop_if(|last| last.minute == end && last.side == Side::After);
    seen
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::{Example, LITRES_A_CHANGE};
    use crate::output::columns;

    fn made(every_minutes: u32) -> Table {
        let example = Example::default();
        let columns = columns::of(&example.input());
        table(&example.run(), &example.case(), &columns, every_minutes).unwrap()
    }

    fn at<'a>(table: &'a Table, row: &'a [String], name: &str) -> &'a str {
        &row[table.heads.iter().position(|h| h.name == name).unwrap()]
    }

    #[test]
    fn an_hourly_series_has_a_row_per_hour_and_ends_at_the_closing_midnight() {
        let table = made(60);
        assert_eq!(table.rows.len(), 11 * 24 + 1);
        assert_eq!(at(&table, &table.rows[1], "day"), "0.0417");
        assert_eq!(at(&table, &table.rows[10], "time"), "2027-03-06T10:00");
        assert_eq!(at(&table, table.rows.last().unwrap(), "day"), "11");
    }

    #[test]
    fn a_row_at_the_instant_of_a_change_shows_the_tank_after_it() {
        let table = made(30);
        let rows: Vec<_> = table
            .rows
            .iter()
            .filter(|row| at(&table, row, "time") == "2027-03-07T09:30")
            .collect();
        assert_eq!(rows.len(), 1);
        assert_eq!(at(&table, rows[0], "tan_mg_n_per_l"), "1");
    }

    #[test]
    fn what_has_been_used_adds_up() {
        let table = made(60);
        let last = table.rows.last().unwrap();
        let litres: f64 = at(&table, last, "water_changed_l").parse().unwrap();
        assert_eq!(litres, 10.0 * LITRES_A_CHANGE);
        // 11 days · 8 h · 0.4 g
        assert_eq!(at(&table, last, "gas_used_g"), "35.2");
    }
}
