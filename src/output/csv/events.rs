//! `events.csv`: everything that happened, with the tank before and after.

use crate::analysis::case::Case;
use crate::base::clock::DAY;
use crate::engine::input::PowerCut;
use crate::engine::result::{Reading, RunResult, Tuning};
use crate::output::columns::Column;
use crate::output::doing;
use crate::output::number::decimal_day;
use crate::output::when::iso_time;

use super::{Head, NotANumber, Row, Table};

const FILE: &str = "events.csv";

struct Entry<'a> {
    minute: u32,
    name: &'a str,
    what: String,
    litres: f64,
    before: &'a Reading,
    after: &'a Reading,
}

/// One row per event, valve tuning and switch of the plan, in the order of time.
pub fn table(run: &RunResult, case: &Case, columns: &[Column]) -> Result<Table, NotANumber> {
    let compared: Vec<&Column> = columns.iter().filter(|column| column.at_events).collect();
    let mut entries = switches(run, case);
    entries.extend(power(run));
    entries.extend(events(run));
    entries.sort_by_key(|entry| entry.minute);
    let rows = entries
        .iter()
        .map(|entry| row(case, &compared, entry))
        .collect::<Result<_, _>>()?;
    Ok(Table {
        file: FILE,
        heads: heads(&compared),
        rows,
    })
}

fn heads(compared: &[&Column]) -> Vec<Head> {
    let mut heads = vec![
        Head::plain("day", "days since midnight of day 0", "clock of the run"),
        Head::plain(
            "time",
            "time of day; with a start, date and time",
            "clock of the run",
        ),
        Head::plain("entry", "entry of the scenario", "its dotted path"),
        Head::plain("what", "what happened", "in words"),
        Head::new(
            "water_out_l",
            "L",
            "water taken out",
            "share of the water present",
        ),
    ];
    for column in compared {
        for (ending, words) in [("before", "just before"), ("after", "just after")] {
            heads.push(Head::new(
                &format!("{}_{ending}", column.name),
                column.unit,
                &format!("{}, {words}", column.meaning),
                column.derived,
            ));
        }
    }
    heads
}

fn row(case: &Case, compared: &[&Column], entry: &Entry) -> Result<Row, NotANumber> {
    let mut row = Row::of([
        decimal_day(entry.minute).as_str(),
        &iso_time(case.filled_on, entry.minute),
        entry.name,
        &entry.what,
    ]);
    row.number(FILE, "water_out_l", entry.minute, entry.litres)?;
    for column in compared {
        for reading in [entry.before, entry.after] {
            row.number(FILE, &column.name, entry.minute, column.of(reading))?;
        }
    }
    Ok(row)
}

fn events(run: &RunResult) -> impl Iterator<Item = Entry<'_>> {
    let end = run.input.end_minute();
    run.events
        .iter()
        .filter(move |event| event.minute < end)
        .map(|event| Entry {
            minute: event.minute,
            name: &event.name,
            what: doing::words(&run.input, event),
            litres: event.litres,
            before: &event.before,
            after: &event.after,
        })
}

/// Switches of the plan and tunings hold from a midnight on and change nothing at that instant.
fn switches<'a>(run: &'a RunResult, case: &'a Case) -> Vec<Entry<'a>> {
    let steps = case
        .switches
        .iter()
        .map(|step| (step.day, step.name.as_str(), step.what.clone()));
    let tunings = run
        .tunings
        .iter()
        .map(|tuning| (tuning.day, "gas.tuned_on", tuned(tuning)));
    steps
        .chain(tunings)
        .filter(|(day, ..)| *day <= run.input.last_day)
        .filter_map(|(day, name, what)| {
            nothing_moved(run, (day * DAY).max(run.input.filled_at), name, what)
        })
        .collect()
}

/// Mains failures, when they begin and end.
fn power(run: &RunResult) -> Vec<Entry<'_>> {
    let end = run.input.end_minute();
    let both = |cut: &PowerCut| [(cut.from, "power fails"), (cut.until, "power is back")];
    run.input
        .power_cuts
        .iter()
        .flat_map(both)
        .filter(|(minute, _)| *minute < end)
        .filter_map(|(minute, what)| nothing_moved(run, minute, "power_cuts", what.into()))
        .collect()
}

/// Something that holds from a minute on: before and after are the same.
fn nothing_moved<'a>(
    run: &'a RunResult,
    minute: u32,
    name: &'a str,
    what: String,
) -> Option<Entry<'a>> {
    let at = run.readings.partition_point(|r| r.minute < minute);
    let reading = run.readings.get(at)?;
    Some(Entry {
        minute,
        name,
        what,
        litres: 0.0,
        before: reading,
        after: reading,
    })
}

/// A tuning in words.
pub fn tuned(tuning: &Tuning) -> String {
    let lights_on = tuning
        .at_lights_on_mg_per_l
        .map_or(String::new(), |co2| format!(", {co2:.1} at lights-on"));
    format!(
        "gas tuned: {:.0} mg/h {}, highest {:.1} mg/L CO2{lights_on}",
        tuning.gas_mg_per_h, tuning.window, tuning.highest_mg_per_l
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::output::columns;

    #[test]
    fn a_power_cut_has_a_row_for_its_beginning_and_its_end() {
        let example = Example::default();
        let mut run = example.run();
        run.input.power_cuts = vec![PowerCut {
            from: 600,
            until: 900,
            battery_air_l_per_min: 0.0,
        }];
        let table = table(&run, &example.case(), &columns::of(&example.input())).unwrap();
        let begins: Vec<&str> = table.rows[0].cells().take(4).collect();
        assert_eq!(
            begins,
            ["0.4167", "2027-03-06T10:00", "power_cuts", "power fails"]
        );
        assert_eq!(&table.rows[1][3], "power is back");
    }

    #[test]
    fn changes_and_switches_stand_in_the_order_of_time_with_both_sides() {
        let example = Example::default();
        let table = table(
            &example.run(),
            &example.case(),
            &columns::of(&example.input()),
        )
        .unwrap();
        // ten changes of the run and one brighter light; the changes of the look-ahead are not there
        assert_eq!(table.rows.len(), 11);
        let place = |name: &str| table.heads.iter().position(|h| h.name == name).unwrap();
        let light = &table.rows[2];
        assert_eq!(&light[place("entry")], "light.steps.brighter");
        let change = &table.rows[0];
        assert_eq!(&change[place("water_out_l")], "25");
        assert_eq!(&change[place("tan_mg_n_per_l_before")], "2");
        assert_eq!(&change[place("tan_mg_n_per_l_after")], "1");
    }
}
