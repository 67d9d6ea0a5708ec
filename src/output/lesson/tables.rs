//! `steps.csv` and `curves.csv` of a lesson.

use crate::analysis::lesson::fact::Fact;
use crate::analysis::lesson::taught::Taught;
use crate::analysis::lesson::trace::Trace;
use crate::output::csv::Head;
use crate::output::number::decimal_day;
use crate::output::table::{Cell, Table};

/// One row per step: every number that is told.
pub fn steps(taught: &Taught<'_>) -> Table {
    let lesson = taught.lesson;
    let mut heads = vec![Head::plain("step", "setting of the input", "the lesson")];
    heads.extend(lesson.facts.iter().flat_map(of_fact));
    let row = |(place, step): (usize, &crate::analysis::lesson::Step)| {
        let seen = taught.seen(place);
        let mut cells = vec![Cell::words_of(step.label)];
        let values = lesson.facts.iter();
        cells.extend(values.flat_map(|fact| {
            let read = fact.of(&seen);
            let own = [read.map(|r| r.value), read.map(|r| r.error)];
            let told = if fact.is_mean() { 2 } else { 1 };
            own.into_iter().take(told).map(Cell::number_or_empty)
        }));
        cells
    };
    Table {
        file: "steps.csv",
        heads,
        rows: lesson.steps.iter().enumerate().map(row).collect(),
    }
}

/// The columns of a fact: of a mean its standard error too.
fn of_fact(fact: &Fact) -> Vec<Head> {
    let derived = "the run of the step; of plausible tanks, means and counts over them";
    let mut heads = vec![Head::new(&column(fact), fact.unit, fact.name, derived)];
    if fact.is_mean() {
        heads.push(Head::new(
            &format!("{}_standard_error_{}", fact.key, fact.unit),
            fact.unit,
            "standard error of that mean",
            "deviation of the pairs over the root of their number",
        ));
    }
    heads
}

/// The column of a fact, with its unit.
fn column(fact: &Fact) -> String {
    let unit = fact.unit.to_lowercase().replace('/', "_per_");
    match unit.replace(' ', "_").as_str() {
        "" => fact.key.to_string(),
        "%" => format!("{}_percent", fact.key),
        unit => format!("{}_{unit}", fact.key),
    }
}

/// One row per step and point of its curves: what is drawn.
pub fn curves(taught: &Taught<'_>) -> Table {
    let traces = taught.lesson.traces();
    let mut heads = vec![
        Head::plain("step", "setting of the input", "the lesson"),
        Head::new(
            "day",
            "days",
            "days since midnight of day 0",
            "the clock of the run",
        ),
    ];
    heads.extend(traces.iter().map(|trace| {
        let derived = match trace {
            Trace::Ready => {
                "plausible tanks that are ready by the day, of 100; no curve of the central run"
            }
            _ => "the central run; twice where something happens, before and after it",
        };
        Head::new(trace.column(), trace.unit(), trace.name(), derived)
    }));
    let mut rows = Vec::new();
    for (step, course) in taught.lesson.steps.iter().zip(&taught.courses) {
        for (at, &minute) in course.minutes.iter().enumerate() {
            let mut cells = vec![
                Cell::words_of(step.label),
                Cell::words_of(decimal_day(minute)),
            ];
            cells.extend(course.values.iter().map(|values| Cell::Number(values[at])));
            rows.push(cells);
        }
    }
    Table {
        file: "curves.csv",
        heads,
        rows,
    }
}
