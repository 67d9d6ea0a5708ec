//! Names at the right ends of lines, with a leader from each line to its name.

use super::figure::{Anchor, Shape};
use super::labels::spread;
use super::sheet::{Sheet, bold, plain};
use super::style::{INK, MUTED, Pen};

/// Least distance of two names, pixels.
const GAP: f64 = 17.0;

/// The name of a line.
#[derive(Debug, Clone, PartialEq)]
pub struct EndName {
    /// What the line shows.
    pub name: String,
    /// Its last value, in words.
    pub value: String,
    /// The height it ends at, in the unit of the panel.
    pub at: f64,
    /// How the line is drawn.
    pub pen: Pen,
    /// Whether it is data (its name is bold) or a limit.
    pub is_data: bool,
}

impl EndName {
    /// The name of a curve.
    pub fn curve(name: &str, value: String, at: f64, pen: Pen) -> EndName {
        EndName {
            name: name.to_string(),
            value,
            at,
            pen,
            is_data: true,
        }
    }
    /// The name of a limit.
    pub fn limit(name: &str, value: String, at: f64, pen: Pen) -> EndName {
        EndName {
            is_data: false,
            ..EndName::curve(name, value, at, pen)
        }
    }
}

/// Writes the names beside a panel, moved apart as little as possible.
pub fn name_ends(sheet: &mut Sheet, panel: usize, names: &[EndName]) {
    let this = &sheet.figure.panels[panel];
    let (right, room) = (this.frame.right, this.frame);
    let wanted: Vec<f64> = names.iter().map(|n| this.y(n.at)).collect();
    // names may stand a little outside a low panel, never as far as its neighbours
    let spare = ((names.len() as f64 - 1.0) * GAP - room.height()).max(0.0) / 2.0;
    let (top, bottom) = (room.top - spare, room.bottom + spare);
    let placed = spread(&wanted, GAP, top, bottom);
    for (name, (from, to)) in names.iter().zip(wanted.into_iter().zip(placed)) {
        let leader = vec![
            (right + 3.0, from),
            (right + 9.0, from),
            (right + 17.0, to),
            (right + 24.0, to),
        ];
        sheet.shape(Shape::Path(leader, name.pen));
        let mut spans = vec![match name.is_data {
            true => bold(&name.name, INK),
            false => plain(&name.name, INK),
        }];
        if !name.value.is_empty() {
            spans.push(plain(&name.value, MUTED));
        }
        sheet.say(spans, Anchor::Start, right + 31.0, to + 4.5);
    }
}
