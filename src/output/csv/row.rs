//! One row of a table: its cells in one text, so that a row costs two pieces of memory, not fifty.

use std::ops::{Index, Range};

use super::NotANumber;
use crate::output::number::push_six_digits;
use crate::output::when::day_and_clock;

/// The cells of a row.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Row {
    text: String,
    ends: Vec<u32>,
}

impl Row {
    /// A row of words.
    pub fn of<C: AsRef<str>>(cells: impl IntoIterator<Item = C>) -> Row {
        let mut row = Row::default();
        for cell in cells {
            row.push(cell.as_ref());
        }
        row
    }
    /// An empty row with room for what another one of the same table holds, and a cell more.
    pub fn as_large_as(other: &Row) -> Row {
        let cell = other.text.len() / other.len().max(1);
        Row {
            text: String::with_capacity(other.text.len() + cell),
            ends: Vec::with_capacity(other.ends.len()),
        }
    }
    /// Adds a cell.
    pub fn push(&mut self, cell: &str) {
        self.text.push_str(cell);
        self.end();
    }
    /// Adds a cell with a number, refused at the door if it is none: the file, the column and the
    /// minute say where.
    pub fn number(
        &mut self,
        file: &'static str,
        column: &str,
        minute: u32,
        value: f64,
    ) -> Result<(), NotANumber> {
        if !value.is_finite() {
            return Err(NotANumber {
                file,
                column: column.into(),
                value,
                when: day_and_clock(minute),
            });
        }
        push_six_digits(&mut self.text, value);
        self.end();
        Ok(())
    }
    fn end(&mut self) {
        let end = u32::try_from(self.text.len());
        self.ends.push(end.expect("a row is shorter than 4 GB"));
    }
    /// Where the text of a cell lies.
    fn span(&self, place: usize) -> Range<usize> {
        let before = place.checked_sub(1).map_or(0, |before| self.ends[before]);
        before as usize..self.ends[place] as usize
    }
    /// How many cells there are.
    pub fn len(&self) -> usize {
        self.ends.len()
    }
    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.ends.is_empty()
    }
    /// The cells in their order.
    pub fn cells(&self) -> impl Iterator<Item = &str> {
        (0..self.len()).map(|place| &self[place])
    }
    /// Bytes of the line if nothing has to be quoted.
    pub fn size(&self) -> usize {
        self.text.len() + self.len()
    }
}

impl Index<usize> for Row {
    type Output = str;

    fn index(&self, place: usize) -> &str {
        &self.text[self.span(place)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_that_is_no_number_is_refused_with_its_place() {
        let refused = Row::default().number("series.csv", "ph", 600, f64::NAN);
        assert_eq!(
            refused.unwrap_err().to_string(),
            "series.csv: ph is NaN on day 0 at 10:00"
        );
    }

    #[test]
    fn cells_come_back_as_they_were_put() {
        let mut row = Row::of(["a", "", "c"]);
        row.number("series.csv", "ph", 0, 7.25).unwrap();
        let cells: Vec<&str> = row.cells().collect();
        assert_eq!(cells, ["a", "", "c", "7.25"]);
    }
}
