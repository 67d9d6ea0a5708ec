//! The CSV files: plain header, units in the names, LF, six significant digits, never NaN.

pub mod daily;
pub mod events;
pub mod guide;
pub mod ledger;
pub mod plan;
pub mod series;

use super::number::six_digits;
use super::when::day_and_clock;

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
    pub rows: Vec<Vec<String>>,
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

/// A cell with a number, refused at the door if it is none.
pub fn cell(
    file: &'static str,
    column: &str,
    minute: u32,
    value: f64,
) -> Result<String, NotANumber> {
    if value.is_finite() {
        return Ok(six_digits(value));
    }
    Err(NotANumber {
        file,
        column: column.into(),
        value,
        when: day_and_clock(minute),
    })
}

impl Table {
    /// The file as bytes.
    pub fn bytes(&self) -> Vec<u8> {
        let mut writer = csv::WriterBuilder::new()
            .terminator(csv::Terminator::Any(b'\n'))
            .from_writer(Vec::new());
        let names: Vec<&str> = self.heads.iter().map(|head| head.name.as_str()).collect();
        writer.write_record(&names).expect(MEMORY);
        for row in &self.rows {
            writer.write_record(row).expect(MEMORY);
        }
        writer.into_inner().expect(MEMORY)
    }
}

const MEMORY: &str = "writing rows of one length into memory cannot fail";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_that_is_no_number_is_refused_with_its_place() {
        let refused = cell("series.csv", "ph", 600, f64::NAN).unwrap_err();
        assert_eq!(
            refused.to_string(),
            "series.csv: ph is NaN on day 0 at 10:00"
        );
    }
}
