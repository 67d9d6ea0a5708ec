//! Numbered marks on a plot, moved apart so that none covers another, even on a phone.

use crate::output::chart::rect::Rect;
use crate::output::lesson::notes::Placed;

use super::scale::{HIGH, Scale, WIDE};
use crate::base::clock::days;

/// The least plot they must be told apart on, pixels: that of a phone 360 wide.
pub const LEAST: (f64, f64) = (278.0, 170.0);
/// Diameter of a mark with its ring, pixels.
pub const MARK: f64 = 22.0;

/// A mark: the panel, its place in shares of the plot, and its words.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// The panel.
    pub panel: usize,
    /// From the left and from the top, 0 to 1.
    pub at: (f64, f64),
    /// The words.
    pub words: String,
}

impl Mark {
    /// Its place on the least plot, pixels.
    pub fn space(&self) -> Rect {
        let (x, y) = (self.at.0 * LEAST.0, self.at.1 * LEAST.1);
        let half = MARK / 2.0;
        Rect::new(x - half, y - half, x + half, y + half)
    }
}

/// The marks of a step, each as near to its place as those before it allow.
pub fn marks(notes: &[Placed], scales: &[Scale]) -> Vec<Mark> {
    let mut placed: Vec<Mark> = Vec::new();
    for note in notes {
        let scale = scales[note.panel];
        let at = (
            scale.x(days(note.minute)) / WIDE,
            scale.y(note.value) / HIGH,
        );
        let mark = |at| Mark {
            panel: note.panel,
            at: inside(at),
            words: note.words.clone(),
        };
        let others: Vec<Rect> = (placed.iter())
            .filter(|other| other.panel == note.panel)
            .map(Mark::space)
            .collect();
        let free = |mark: &Mark| !others.iter().any(|other| other.overlaps(&mark.space()));
        let found = around(at).map(mark).find(free);
        placed.push(found.unwrap_or_else(|| mark(at)));
    }
    placed
}

/// Places ever farther from a mark: above, below, right, left.
fn around((x, y): (f64, f64)) -> impl Iterator<Item = (f64, f64)> {
    let step = MARK / 4.0;
    (0..40).flat_map(move |ring| {
        let (dx, dy) = (
            f64::from(ring) * step / LEAST.0,
            f64::from(ring) * step / LEAST.1,
        );
        [(x, y - dy), (x, y + dy), (x + dx, y), (x - dx, y)]
    })
}

/// A place from which a mark does not leave the plot.
fn inside((x, y): (f64, f64)) -> (f64, f64) {
    let (w, h) = (MARK / 2.0 / LEAST.0, MARK / 2.0 / LEAST.1);
    (x.clamp(w, 1.0 - w), y.clamp(h, 1.0 - h))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::lesson::trace::Trace;
    use crate::base::clock::DAY;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn marks_never_lie_over_each_other_nor_leave_the_plot(
            places in prop::collection::vec((0..56_u32, 0.0..4.0_f64), 1..6)
        ) {
            let scale = Scale { across: (0.0, 57.0), up: (0.0, 4.0) };
            let note = |&(day, value): &(u32, f64)| Placed {
                panel: 0,
                trace: Trace::Ammonia,
                is_of_base: false,
                minute: day * DAY,
                value,
                words: String::new(),
            };
            let notes: Vec<Placed> = places.iter().map(note).collect();
            let marks = marks(&notes, &[scale]);
            let plot = Rect::new(0.0, 0.0, LEAST.0, LEAST.1).grown(1e-9);
            for (place, mark) in marks.iter().enumerate() {
                prop_assert!(plot.holds(&mark.space()));
                prop_assert!(!marks[..place].iter().any(|other| other.space().overlaps(&mark.space())));
            }
        }
    }
}
