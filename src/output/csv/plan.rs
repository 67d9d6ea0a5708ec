//! `plan.csv`: one dated row per day, what to do and what to test.

use crate::analysis::arrivals::Arrival;
use crate::analysis::case::Case;
use crate::analysis::ready::Verdict;
use crate::analysis::testing;
use crate::analysis::uncertain::waters::Recipe;
use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::result::{EventRecord, RunResult};
use crate::output::doing;
use crate::output::when::{iso_date, weekday};

use super::{Head, NotANumber, Row, Table};

const FILE: &str = "plan.csv";

/// One row per day of the run.
pub fn table(
    run: &RunResult,
    case: &Case,
    verdict: &Verdict,
    arrivals: &[Arrival],
) -> Result<Table, NotANumber> {
    let tests = testing::by_day(run, case, verdict, arrivals);
    let rows = (0..=run.input.last_day)
        .zip(tests)
        .map(|(day, tests)| row(run, case, day, &tests, arrivals))
        .collect::<Result<_, _>>()?;
    Ok(Table {
        file: FILE,
        heads: heads(),
        rows,
    })
}

fn heads() -> Vec<Head> {
    vec![
        Head::plain("day", "number of the day", "clock of the run"),
        Head::plain(
            "date",
            "its date; empty without a start",
            "clock of the run",
        ),
        Head::plain(
            "weekday",
            "its weekday; empty without a start",
            "clock of the run",
        ),
        Head::plain("do", "what to do, with the time", "entries of the scenario"),
        Head::new(
            "water_out_l",
            "L",
            "water to take out and put back",
            "share of the water present",
        ),
        Head::plain(
            "set",
            "light, gas and air to set from this day on",
            "entries of the scenario",
        ),
        Head::plain(
            "test",
            "what to test with a kit",
            "common practice, and where the forecast moves",
        ),
        Head::plain(
            "note",
            "left out while away; animals in a tank not ripe",
            "entries of the scenario",
        ),
    ]
}

fn row(
    run: &RunResult,
    case: &Case,
    day: u32,
    tests: &[&str],
    arrivals: &[Arrival],
) -> Result<Row, NotANumber> {
    let events: Vec<&EventRecord> = run
        .events
        .iter()
        .filter(|e| e.minute / DAY == day)
        .collect();
    let litres = events.iter().map(|event| event.litres).sum();
    let mut row = Row::of([
        day.to_string(),
        iso_date(case.filled_on, day),
        weekday(case.filled_on, day),
        to_do(run, case, day, &events),
    ]);
    row.number(FILE, "water_out_l", day * DAY, litres)?;
    row.push(&to_set(case, day));
    row.push(&tests.join(", "));
    row.push(&notes(case, day, arrivals));
    Ok(row)
}

fn to_do(run: &RunResult, case: &Case, day: u32, events: &[&EventRecord]) -> String {
    let mut lines: Vec<String> = Vec::new();
    let reminder = |recipe: &Recipe| match case.waters.needs_dechlorinator(recipe) {
        true => ", with dechlorinator",
        false => "",
    };
    if day == 0 {
        let filled = TimeOfDay::of(run.input.filled_at);
        lines.push(format!(
            "{filled} tank full ({:.1} L){}",
            run.input.tank.volume_l,
            reminder(&case.waters.fill)
        ));
    }
    lines.extend(events.iter().map(|event| {
        let is_change = event.litres > 0.0;
        format!(
            "{} {}{}",
            TimeOfDay::of(event.minute),
            doing::words(&run.input, event),
            if is_change {
                reminder(&case.waters.refill)
            } else {
                ""
            }
        )
    }));
    lines.extend(
        run.tunings
            .iter()
            .filter(|tuning| tuning.day == day)
            .map(|tuning| {
                format!(
                    "tune the gas valve: about {:.0} mg/h, {}, until the highest CO2 of the day is {:.0} mg/L",
                    tuning.gas_mg_per_h, tuning.window, tuning.highest_mg_per_l
                )
            }),
    );
    lines.join("; ")
}

fn to_set(case: &Case, day: u32) -> String {
    let steps: Vec<&str> = case
        .switches
        .iter()
        .filter(|step| step.day == day)
        .map(|step| step.what.as_str())
        .collect();
    steps.join("; ")
}

fn notes(case: &Case, day: u32, arrivals: &[Arrival]) -> String {
    let mut notes: Vec<String> = Vec::new();
    if case
        .away
        .iter()
        .any(|&(first, last)| (first..=last).contains(&day))
    {
        notes.push("away".into());
    }
    let left_out = case.left_out.iter().filter(|(on, _)| *on == day);
    notes.extend(left_out.map(|(_, entry)| format!("left out: {entry}")));
    let early = arrivals
        .iter()
        .filter(|arrival| arrival.day == day && !arrival.ripe);
    notes.extend(early.map(|arrival| {
        format!(
            "{}: the forecast does not call this tank ripe",
            arrival.name
        )
    }));
    notes.join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::arrivals::arrivals;
    use crate::analysis::example::Example;
    use crate::analysis::ready::judge;
    use crate::analysis::uncertain::waters::{Carbon, Water, Waters};
    use crate::model::composition::Composition;

    #[test]
    fn a_dechlorinator_is_called_to_mind_where_there_is_something_to_bind() {
        let (run, mut case) = (Example::default().run(), Example::default().case());
        let on_day_3 = |case: &Case| {
            let verdict = judge(&run, case);
            let arrivals = arrivals(&run, case, &verdict);
            table(&run, case, &verdict, &arrivals).unwrap().rows[3][3].to_string()
        };
        let tap = |chlorine_mg_cl2_per_l: f64, is_dechlorinated: bool| Waters {
            list: vec![Water {
                holds: Composition {
                    chlorine_mg_cl2_per_l,
                    ..case.input.refill
                },
                carbon: Carbon::Ph(7.0),
            }],
            refill: Recipe {
                parts: vec![(1.0, 0)],
                is_dechlorinated,
                temperature_c: None,
            },
            ..Waters::default()
        };
        let [with, none, without] = [tap(0.2, true), tap(0.0, true), tap(0.2, false)];
        case.waters = with;
        assert!(on_day_3(&case).ends_with("(25.0 L), with dechlorinator"));
        for waters in [none, without] {
            case.waters = waters;
            assert!(on_day_3(&case).ends_with("(25.0 L)"));
        }
    }

    #[test]
    fn every_day_has_one_row_with_its_work_and_its_absences() {
        let example = Example {
            stocked: Some((4, 0.1)),
            ..Example::default()
        };
        let (run, case) = (example.run(), example.case());
        let verdict = judge(&run, &case);
        let table = table(&run, &case, &verdict, &arrivals(&run, &case, &verdict)).unwrap();
        assert_eq!(table.rows.len(), 11);
        assert_eq!(&table.rows[0][3], "00:00 tank full (50.0 L)");
        let day_3 = &table.rows[3];
        let begins: Vec<&str> = day_3.cells().take(3).collect();
        assert_eq!(begins, ["3", "2027-03-09", "Tue"]);
        assert_eq!(&day_3[3], "09:30 change 50 % of the water (25.0 L)");
        assert_eq!(&day_3[5], "light 11:30..19:00 at 90 µmol/m²/s");
        assert_eq!(&table.rows[8][7], "away; left out: doses.weekly");
        assert!(table.rows[4][7].contains("does not call this tank ripe"));
    }
}
