//! What a scenario is not sure of: a range `"3..4 dKH"`, or a word that stands for a number.

use super::moves::Move;
use super::shape::Shape;

/// A value of the scenario that is not known exactly.
#[derive(Debug, Clone, PartialEq)]
pub struct Unsure {
    /// Dotted path of the value, for example `water.tap.alkalinity`.
    pub path: String,
    /// What is known of it.
    pub known: Known,
    /// What it moves in the tank.
    pub moves: Vec<Move>,
}

/// What is known of a value.
#[derive(Debug, Clone, PartialEq)]
pub enum Known {
    /// Its 5 % and its 95 % point, written as a range.
    Range {
        /// How it is spread, in `unit`.
        shape: Shape,
        /// The unit of the shape.
        unit: &'static str,
        /// As it is written.
        written: Written,
    },
    /// A word that stands for a parameter, for example `k_600_ripple`.
    Word(&'static str),
}

/// A range as it is written.
#[derive(Debug, Clone, PartialEq)]
pub struct Written {
    /// The text.
    pub text: String,
    /// Its ends, in the unit of the shape.
    pub ends: (f64, f64),
}

impl Unsure {
    /// The parameter it is about: one that a word stands for, or one of `[parameters]`.
    pub fn parameter(&self) -> Option<&str> {
        match self.known {
            Known::Word(id) => Some(id),
            Known::Range { .. } => self.path.strip_prefix("parameters."),
        }
    }
}
