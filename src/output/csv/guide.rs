//! `columns.csv`: every column of every file, with unit, meaning and how it is worked out.

use super::{Head, Row, Table};

const FILE: &str = "columns.csv";

/// One row per column of the tables given, and of this one.
pub fn table(tables: &[Table]) -> Table {
    let mut rows: Vec<Row> = tables
        .iter()
        .flat_map(|table| table.heads.iter().map(|head| row(table.file, head)))
        .collect();
    rows.extend(heads().iter().map(|head| row(FILE, head)));
    Table {
        file: FILE,
        heads: heads(),
        rows,
    }
}

fn heads() -> Vec<Head> {
    vec![
        Head::plain("file", "file of the column", "list of the program"),
        Head::plain("column", "name of the column", "list of the program"),
        Head::plain(
            "unit",
            "its unit; empty for words, dates and counts",
            "list of the program",
        ),
        Head::plain("meaning", "what it is", "list of the program"),
        Head::plain("derived", "how it is worked out", "list of the program"),
    ]
}

fn row(file: &str, head: &Head) -> Row {
    Row::of([file, &head.name, &head.unit, &head.meaning, &head.derived])
}
