//! `sweep.csv`: one row per point and figure.

use crate::analysis::compare::lines::Line;
use crate::analysis::sweep::Sweep;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

const FILE: &str = "sweep.csv";

/// One row per point and figure.
pub fn table(sweep: &Sweep) -> Table {
    let points = 0..sweep.points.len();
    let rows = points.flat_map(|number| {
        let lines = sweep.lines.iter().enumerate();
        lines.map(move |(place, line)| row(sweep, number, place, line))
    });
    Table {
        file: FILE,
        heads: heads(sweep),
        rows: rows.collect(),
    }
}

fn row(sweep: &Sweep, number: usize, place: usize, line: &Line) -> Vec<Cell> {
    let point = &sweep.points[number];
    let along = sweep.axes.iter().zip(&point.at);
    let settings = along.map(|(axis, &at)| Cell::Number(axis.settings[at].number));
    let value = line.values[number];
    let ends = value.ends();
    let middle = value.middle().filter(|middle| middle.is_finite());
    let figure = [
        Cell::words_of(line.name),
        Cell::words_of(line.unit),
        Cell::number_or_empty(point.central[place]),
        Cell::number_or_empty(ends.map(|ends| ends[0])),
        Cell::number_or_empty(middle),
        Cell::number_or_empty(ends.map(|ends| ends[1])),
        Cell::Count(point.curve.members as u64),
    ];
    settings.chain(figure).collect()
}

fn heads(sweep: &Sweep) -> Vec<Head> {
    let axes = sweep.axes.iter();
    let mut heads: Vec<Head> = axes
        .map(|axis| Head::new(&axis.path, &axis.unit, "what this is set to", "as asked"))
        .collect();
    let figure = |name: &str, meaning: &str, derived: &str| {
        Head::new(name, "that of the row", meaning, derived)
    };
    heads.extend([
        Head::plain(
            "figure",
            "name of the figure, as in members.csv",
            "list of the program",
        ),
        Head::plain(
            "unit",
            "unit of the figure; 1 for pH and days",
            "list of the program",
        ),
        figure(
            "central",
            "what the central run has; of ready days its own, empty when later than the last",
            "the central run",
        ),
        figure(
            "p05",
            "5 of 100 tanks lie below; empty of figures all tanks have together",
            "all tanks",
        ),
        figure(
            "p50",
            "the middle one, or what all tanks have together; empty when later than the last day",
            "all tanks",
        ),
        figure(
            "p95",
            "95 of 100 tanks lie below; empty of figures all tanks have together",
            "all tanks",
        ),
        Head::plain("members", "plausible tanks that did not fail", "count"),
    ]);
    heads
}
