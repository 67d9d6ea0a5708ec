//! Quantities that may be written as a range: `"3..4 dKH"` is 3 in one of twenty cases or less, 4 in one
//! of twenty or more; the central run uses its middle.

use crate::analysis::uncertain::moves::{Move, Place as To};
use crate::analysis::uncertain::shape::{Measure, Shape};
use crate::analysis::uncertain::unsure::{Known, Written};
use crate::base::units::{Kind, quantity};

use crate::scenario::desk::Desk;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::tree::{Node, Value};

use super::node::quantity_of;
use super::values::default_quantity;
use super::{Read, Reader};

/// A quantity as it was said: a value, or the middle of a range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Said {
    /// The value, or the middle.
    pub value: f64,
    /// The number of the range at the desk.
    unsure: Option<usize>,
}

impl Said {
    /// A value that is known.
    pub fn known(value: f64) -> Said {
        Said {
            value,
            unsure: None,
        }
    }
    /// A value that a word stands for; a number of [`Desk::unsure`].
    pub fn unsure(value: f64, number: usize) -> Said {
        Said {
            value,
            unsure: Some(number),
        }
    }
    /// What it moves, if it is not known.
    pub fn moves(&self, desk: &Desk, place: To) {
        self.moves_times(desk, place, 1.0);
    }
    /// The same for a place that takes a multiple of it.
    pub fn moves_times(&self, desk: &Desk, place: To, factor: f64) {
        if let Some(unsure) = self.unsure {
            desk.moves(unsure, Move { place, factor });
        }
    }
}

impl Reader<'_> {
    /// A quantity that may be a range, in the base unit of its kind and within bounds of that unit.
    pub fn said(&self, key: &'static str, kind: &'static Kind, bounds: (f64, f64)) -> Read<Said> {
        let Some(entry) = self.wanted(key).filter(|entry| is_range(&entry.node)) else {
            return self.quantity(key, kind, bounds).map(Said::known);
        };
        let path = self.path_of(key);
        match range_of(self.desk, &path, &entry.node, kind, bounds) {
            Some(said) => {
                self.given(key, &entry.node);
                Read::Given(said, entry.node.place.clone())
            }
            None => Read::Bad(entry.node.place.clone()),
        }
    }
    /// The same, or the documented default.
    pub fn said_or_default(
        &self,
        key: &'static str,
        kind: &'static Kind,
        bounds: (f64, f64),
    ) -> Said {
        match self.said(key, kind, bounds) {
            Read::Given(said, _) => said,
            Read::Bad(_) => Said::known(default_quantity(&self.pattern_of(key), kind)),
            Read::Absent => {
                self.note_default(key);
                Said::known(default_quantity(&self.pattern_of(key), kind))
            }
        }
    }
    /// A quantity that may be a range and goes to one place.
    pub fn said_for(
        &self,
        key: &'static str,
        kind: &'static Kind,
        bounds: (f64, f64),
        place: To,
    ) -> Read<f64> {
        let said = self.said(key, kind, bounds);
        if let Read::Given(said, _) = &said {
            said.moves(self.desk, place);
        }
        said.map(|said| said.value)
    }
}

/// Whether a value is written as a range.
pub fn is_range(node: &Node) -> bool {
    matches!(&node.value, Value::Text(text) if text.contains(".."))
}

/// A range as a quantity, with both ends within bounds; what is wrong goes to the desk.
pub fn range_of(
    desk: &Desk,
    path: &str,
    node: &Node,
    kind: &'static Kind,
    bounds: (f64, f64),
) -> Option<Said> {
    let read = |node: &Node| quantity_of(desk, path, node, kind, bounds);
    let (low, high) = ends_of(desk, path, node, read)?;
    let shape = Shape::of_range(low, high, measure_of(kind)).within(bounds);
    let known = Known::Range {
        shape,
        unit: kind.base().symbol,
        written: Written {
            text: node.value.written(),
            ends: (low, high),
        },
    };
    Some(Said::unsure(shape.middle, desk.unsure(path, known)))
}

/// Both ends of a range, each read as a value of its own; what is wrong goes to the desk.
pub fn ends_of(
    desk: &Desk,
    path: &str,
    node: &Node,
    read: impl Fn(&Node) -> Option<f64>,
) -> Option<(f64, f64)> {
    let written = node.value.written();
    let (first, last) = quantity::ends(&written)?;
    let end = |text: String| {
        read(&Node {
            place: node.place.clone(),
            value: Value::Text(text),
        })
    };
    let (low, high) = (end(first)?, end(last)?);
    if low >= high {
        desk.problem(does_not_rise(path, &written, &node.place));
        return None;
    }
    Some((low, high))
}

/// The problem of a range whose ends stand the wrong way round, or are the same.
fn does_not_rise(path: &str, written: &str, place: &Place) -> Problem {
    Problem::at(place, format!("{path} = \"{written}\" does not rise"))
        .label("the lower end first")
        .help("for one value write it without the dots")
}

/// What the numbers of a kind are.
fn measure_of(kind: &Kind) -> Measure {
    let is_shifted = kind.units.iter().any(|unit| unit.shift != 0.0);
    match kind.base().symbol == "1" {
        true => Measure::Share,
        false if is_shifted => Measure::Level,
        false => Measure::Amount,
    }
}
