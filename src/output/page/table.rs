//! Tables that turn into cards where the page is narrow; roles are said, since cards would lose them.

use maud::{Markup, html};

use crate::output::chart::words::short;
use crate::output::csv;

/// The name of a column as words, its unit behind it.
pub fn name(head: &csv::Head) -> String {
    let unit = head.unit.to_lowercase().replace('/', "_per_");
    let bare = head
        .name
        .strip_suffix(&format!("_{}", unit.replace(' ', "_")));
    match bare {
        Some(bare) if !unit.is_empty() => format!("{}, {}", bare.replace('_', " "), head.unit),
        _ => head.name.replace('_', " "),
    }
}

/// What stands where there is nothing.
pub const NOTHING: &str = "–";
/// Signs from which on a cell is read as a text: on a narrow page it stands under its head, not beside it.
const TEXT_FROM: usize = 26;

/// A cell: numbers with a point are rounded to two or three digits that count, the rest stays.
fn said(cell: &str) -> String {
    match cell.parse::<f64>() {
        _ if cell.is_empty() => NOTHING.into(),
        Ok(value) if cell.contains('.') => short(value),
        _ => cell.to_string(),
    }
}

fn is_text(cell: &str) -> bool {
    cell.chars().count() >= TEXT_FROM
}

/// Whether a cell is a date, which stays in one line.
fn is_date(cell: &str) -> bool {
    let parts: Vec<&str> = cell.split('-').collect();
    let digits = |part: &&str| !part.is_empty() && part.chars().all(|sign| sign.is_ascii_digit());
    parts.len() == 3 && parts.iter().all(digits)
}

fn class(cell: &str) -> Option<&'static str> {
    match cell {
        _ if is_text(cell) => Some("text"),
        _ if is_date(cell) => Some("date"),
        _ => None,
    }
}

/// A table of words: a caption, what heads the columns, and rows whose first cell names them.
#[derive(Debug, Clone, PartialEq)]
pub struct Words {
    /// What it shows.
    pub caption: String,
    /// The heads.
    pub heads: Vec<String>,
    /// The rows.
    pub rows: Vec<Vec<String>>,
}

impl Words {
    /// What stands in a CSV file, with numbers as people say them.
    pub fn of_csv(caption: &str, table: &csv::Table, head: fn(&csv::Head) -> String) -> Words {
        let row = |row: &csv::Row| row.cells().map(said).collect();
        Words {
            caption: caption.into(),
            heads: table.heads.iter().map(head).collect(),
            rows: table.rows.iter().map(row).collect(),
        }
        .without_empty_columns()
    }
    /// Columns in which no row has anything are left out.
    fn without_empty_columns(self) -> Words {
        let is_kept: Vec<bool> = (0..self.heads.len())
            .map(|at| self.rows.iter().any(|row| row[at] != NOTHING))
            .collect();
        let kept = |cells: Vec<String>| {
            let cells = cells.into_iter().zip(&is_kept);
            cells
                .filter(|(_, kept)| **kept)
                .map(|(cell, _)| cell)
                .collect()
        };
        Words {
            caption: self.caption,
            heads: kept(self.heads),
            rows: self.rows.into_iter().map(kept).collect(),
        }
    }
    /// The table; the row of a place is marked as the one that is shown.
    pub fn markup(&self, shown: Option<usize>) -> Markup {
        html! {
            table role="table" {
                caption { (self.caption) }
                thead role="rowgroup" {
                    tr role="row" { @for head in &self.heads { th role="columnheader" scope="col" { (head) } } }
                }
                tbody role="rowgroup" {
                    @for (place, row) in self.rows.iter().enumerate() {
                        tr role="row" class=[(shown == Some(place)).then_some("shown")] {
                            @for (column, cell) in row.iter().enumerate() {
                                @if column == 0 {
                                    th role="rowheader" scope="row" { (cell) }
                                } @else {
                                    td role="cell" class=[class(cell)] data-label=(self.heads.get(column).map_or("", String::as_str)) { (cell) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
