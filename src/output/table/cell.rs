//! One cell of a table.

use crate::output::number::six_digits;

/// What stands in a cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Nothing, where there is nothing to tell.
    Empty,
    /// Words, a name or a date.
    Words(String),
    /// A whole number of things, or a day.
    Count(u64),
    /// A number in the unit of its column.
    Number(f64),
}

impl Cell {
    /// A cell with words.
    pub fn words_of(words: impl Into<String>) -> Cell {
        Cell::Words(words.into())
    }
    /// A number, or nothing.
    pub fn number_or_empty(value: Option<f64>) -> Cell {
        value.map_or(Cell::Empty, Cell::Number)
    }
    /// As it is written: numbers with six digits that count, without idle zeros.
    pub fn words(&self) -> String {
        match self {
            Cell::Empty => String::new(),
            Cell::Words(words) => words.clone(),
            Cell::Count(count) => count.to_string(),
            Cell::Number(value) => six_digits(*value),
        }
    }
}
