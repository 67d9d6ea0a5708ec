//! A table of named columns with units, to be written as CSV, JSON or Markdown.
//!
//! ```text
//! Table { heads, rows of cells } ──┬─ csv       what goes into a folder, or to a spreadsheet
//!                                  ├─ json      one object per row; columns with their units beside them
//!                                  └─ markdown  for a page; sideways where there are more columns than rows
//! ```

mod cell;
mod json;
mod markdown;

use super::csv::{self, Head, NotANumber, Row};

pub use cell::Cell;

/// A table as a value.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Name of its file, with its ending.
    pub file: &'static str,
    /// What heads each column.
    pub heads: Vec<Head>,
    /// The cells, row by row, one per column.
    pub rows: Vec<Vec<Cell>>,
}

/// How a table is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Values with commas between them, the first line naming the columns.
    Csv,
    /// One object per row, numbers as numbers.
    Json,
    /// A table of a Markdown page.
    Markdown,
}

impl Table {
    /// The table in a form, ending with a line feed.
    ///
    /// # Errors
    /// When a number is none that a file may hold.
    pub fn written(&self, form: Form) -> Result<String, NotANumber> {
        let csv = self.csv()?;
        Ok(match form {
            Form::Csv => String::from_utf8_lossy(&csv.bytes()).into_owned(),
            Form::Json => json::text(self),
            Form::Markdown => markdown::text(self),
        })
    }
    /// The table as a CSV file.
    ///
    /// # Errors
    /// When a number is none that a file may hold; the row is named by its first cell.
    pub fn csv(&self) -> Result<csv::Table, NotANumber> {
        let rows = self.rows.iter().map(|row| self.csv_row(row));
        Ok(csv::Table {
            file: self.file,
            heads: self.heads.clone(),
            rows: rows.collect::<Result<_, _>>()?,
        })
    }
    fn csv_row(&self, cells: &[Cell]) -> Result<Row, NotANumber> {
        for (head, cell) in self.heads.iter().zip(cells) {
            if let Cell::Number(value) = cell
                && !value.is_finite()
            {
                return Err(NotANumber {
                    file: self.file,
                    column: head.name.clone(),
                    value: *value,
                    when: cells.first().map_or(String::new(), Cell::words),
                });
            }
        }
        Ok(Row::of(cells.iter().map(Cell::words)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    pub(super) fn two_tanks() -> Table {
        Table {
            file: "tanks.csv",
            heads: vec![
                Head::plain("tank", "which", "as said"),
                Head::new("peak_mg_n_per_l", "mg N/L", "the peak", "the run"),
                Head::plain("visits", "how many", "count"),
            ],
            rows: vec![
                vec![
                    Cell::words_of("a | b"),
                    Cell::Number(1.0 / 3.0),
                    Cell::Count(3),
                ],
                vec![Cell::words_of("12"), Cell::Empty, Cell::Count(0)],
            ],
        }
    }

    #[test]
    fn a_table_reads_the_same_in_every_form() {
        let table = two_tanks();
        let csv = "tank,peak_mg_n_per_l,visits\na | b,0.333333,3\n12,,0\n";
        assert_eq!(table.written(Form::Csv).unwrap(), csv);
        let read: serde_json::Value =
            serde_json::from_str(&table.written(Form::Json).unwrap()).unwrap();
        assert_eq!(read["columns"][1]["unit"], "mg N/L");
        assert_eq!(read["rows"][0]["peak_mg_n_per_l"], 0.333333);
        assert_eq!(read["rows"][1]["tank"], "12", "a name stays a name");
        assert!(read["rows"][1]["peak_mg_n_per_l"].is_null());
        let markdown = table.written(Form::Markdown).unwrap();
        assert!(markdown.contains("| a \\| b |"), "{markdown}");
    }

    #[test]
    fn what_is_no_number_is_refused_with_its_row() {
        let mut table = two_tanks();
        table.rows[1][1] = Cell::Number(f64::NAN);
        let refused = table.written(Form::Json).unwrap_err().to_string();
        assert_eq!(refused, "tanks.csv: peak_mg_n_per_l is NaN on 12");
    }
}
