//! `table.csv`: one row per plan, every figure with its band.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::lines::{Line, Standing};
use crate::analysis::compare::value::Value;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

use super::paragraph::paragraph;

const FILE: &str = "table.csv";
/// Endings of the columns of a band.
const ENDS: [(&str, &str); 2] = [
    ("p05", "5 of 100 tanks lie below"),
    ("p95", "95 of 100 tanks lie below"),
];

/// One row per plan.
pub fn table(comparison: &Comparison<'_>) -> Table {
    let places = 0..comparison.strategies.len();
    Table {
        file: FILE,
        heads: heads(comparison),
        rows: places.map(|place| row(comparison, place)).collect(),
    }
}

fn row(comparison: &Comparison<'_>, place: usize) -> Vec<Cell> {
    let strategy = &comparison.strategies[place];
    let mut cells = vec![
        Cell::words_of(&strategy.key),
        Cell::words_of(&strategy.case.name),
        Cell::Count(strategy.curve.members as u64),
    ];
    for line in &comparison.lines {
        cells.extend(of_line(line, place));
    }
    cells.push(stands(comparison, place, Standing::Best));
    cells.push(stands(comparison, place, Standing::Worst));
    cells.push(paragraph(comparison, place).map_or(Cell::Empty, Cell::Words));
    cells
}

/// The middle and, where the figure is a band in some plan, its ends.
fn of_line(line: &Line, place: usize) -> Vec<Cell> {
    let value = line.values[place];
    let middle = value.middle().filter(|middle| middle.is_finite());
    let mut cells = vec![Cell::number_or_empty(middle)];
    if has_band(line) {
        let ends = value.ends();
        cells.extend((0..ENDS.len()).map(|end| Cell::number_or_empty(ends.map(|ends| ends[end]))));
    }
    cells
}

fn has_band(line: &Line) -> bool {
    let of_members = |value: &Value| matches!(value, Value::Band(_) | Value::Nothing);
    line.values.iter().any(of_members)
}

fn stands(comparison: &Comparison<'_>, place: usize, wanted: Standing) -> Cell {
    let lines = comparison.lines.iter();
    let names = lines.filter(|line| line.standing(place) == wanted);
    let names: Vec<&str> = names.map(|line| line.name).collect();
    match names.is_empty() {
        true => Cell::Empty,
        false => Cell::words_of(names.join(" ")),
    }
}

fn heads(comparison: &Comparison<'_>) -> Vec<Head> {
    let mut heads = vec![
        Head::plain("strategy", "short name of the plan", "name of its file"),
        Head::plain("name", "name of the scenario", "as said"),
        Head::plain("members", "plausible tanks that did not fail", "count"),
    ];
    for line in &comparison.lines {
        let derived = if has_band(line) {
            "middle one of all tanks"
        } else {
            "all tanks"
        };
        heads.push(Head::new(line.name, line.unit, line.what, derived));
        if has_band(line) {
            let end = |(end, words): (&str, &str)| {
                let name = format!("{}_{end}", line.name);
                Head::new(&name, line.unit, line.what, words)
            };
            heads.extend(ENDS.map(end));
        }
    }
    let told = "columns, by the middles; differences no card or gauge would show are not told";
    heads.extend([
        Head::plain(
            "best_in",
            "figures in which no plan is better and some are worse",
            told,
        ),
        Head::plain(
            "worst_in",
            "figures in which no plan is worse and some are better",
            told,
        ),
        Head::plain("why", "why it wins or loses", "facts of the runs"),
    ]);
    heads
}
