//! The CSV files: plain header, units in the names, LF, six significant digits, never NaN.

pub mod bands;
pub mod daily;
pub mod events;
pub mod guide;
pub mod ledger;
pub mod levers;
pub mod members;
pub mod plan;
pub mod ready;
mod row;
pub mod series;

pub use row::Row;

/// What heads one column of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Head {
    /// Name, with the unit in it.
    pub name: String,
    /// Unit; empty for words, dates and counts.
    pub unit: String,
    /// What it is.
    pub meaning: String,
    /// How it is worked out.
    pub derived: String,
}

impl Head {
    /// A column of words, dates or counts.
    pub fn plain(name: &str, meaning: &str, derived: &str) -> Head {
        Head::new(name, "", meaning, derived)
    }
    /// A column of numbers with a unit.
    pub fn new(name: &str, unit: &str, meaning: &str, derived: &str) -> Head {
        Head {
            name: name.into(),
            unit: unit.into(),
            meaning: meaning.into(),
            derived: derived.into(),
        }
    }
}

/// One CSV file as a value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Table {
    /// Name of the file.
    pub file: &'static str,
    /// What heads each column.
    pub heads: Vec<Head>,
    /// The cells, row by row.
    pub rows: Vec<Row>,
}

/// A number that no file may hold.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[error("{file}: {column} is {value} on {when}")]
pub struct NotANumber {
    /// The file it was meant for.
    pub file: &'static str,
    /// The column.
    pub column: String,
    /// What was found.
    pub value: f64,
    /// Day and time, or the row in words.
    pub when: String,
}

impl Table {
    /// The file as bytes.
    pub fn bytes(&self) -> Vec<u8> {
        let heads = Row::of(self.heads.iter().map(|head| &head.name));
        let rows = || std::iter::once(&heads).chain(&self.rows);
        let mut bytes = Vec::with_capacity(rows().map(Row::size).sum());
        for row in rows() {
            match row.line() {
                Some(line) => {
                    bytes.extend_from_slice(line.as_bytes());
                    bytes.push(b'\n');
                }
                None => write_quoted(row, &mut bytes),
            }
        }
        bytes
    }
}

fn write_quoted(row: &Row, bytes: &mut Vec<u8>) {
    let mut writer = csv::Writer::from_writer(bytes);
    let written = writer.write_record(row.cells());
    written.expect("memory takes every row");
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn rows_are_written_as_the_library_writes_them(
            cells in prop::collection::vec("[a,\"\n\r é#]{0,4}", 1..5)
        ) {
            let table = Table {
                file: "x.csv",
                heads: vec![Head::plain("x", "", ""); cells.len()],
                rows: vec![Row::of(&cells)],
            };
            let mut writer = csv::Writer::from_writer(Vec::new());
            writer.write_record(vec!["x"; cells.len()]).unwrap();
            writer.write_record(&cells).unwrap();
            prop_assert_eq!(table.bytes(), writer.into_inner().unwrap());
        }
    }
}
