//! One row of a table: its cells in one text, as the file has them, so that a row costs two pieces of
//! memory, not fifty, and is copied into the file in one go.

use std::ops::{Index, Range};

use super::NotANumber;
use crate::output::number::push_six_digits;
use crate::output::when::day_and_clock;

/// What parts two cells of a row.
const COMMA: char = ',';
/// A cell with one of these has to be quoted.
const TO_BE_QUOTED: [char; 4] = [COMMA, '"', '\n', '\r'];

/// The cells of a row.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Row {
    /// The cells, each followed by a comma.
    text: String,
    /// Where the comma of each cell stands.
    commas: Vec<u32>,
    /// Whether a cell has to be quoted.
    quoted: bool,
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
            commas: Vec::with_capacity(other.commas.len()),
            quoted: false,
        }
    }
    /// Adds a cell.
    pub fn push(&mut self, cell: &str) {
        self.quoted |= cell.contains(TO_BE_QUOTED);
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
        self.commas.push(end.expect("a row is shorter than 4 GB"));
        self.text.push(COMMA);
    }
    /// Where the text of a cell lies.
    fn span(&self, place: usize) -> Range<usize> {
        let before = place
            .checked_sub(1)
            .map_or(0, |before| self.commas[before] + 1);
        before as usize..self.commas[place] as usize
    }
    /// How many cells there are.
    pub fn len(&self) -> usize {
        self.commas.len()
    }
    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.commas.is_empty()
    }
    /// The cells in their order.
    pub fn cells(&self) -> impl Iterator<Item = &str> {
        (0..self.len()).map(|place| &self[place])
    }
    /// The line of the file without its end, unless cells have to be quoted.
    pub fn line(&self) -> Option<&str> {
        // of a row with one cell that is empty nothing would be left
        let plain = !self.quoted && self.text.len() > 1;
        plain.then(|| &self.text[..self.text.len() - 1])
    }
    /// Bytes of the line and its end if nothing has to be quoted.
    pub fn size(&self) -> usize {
        self.text.len()
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
