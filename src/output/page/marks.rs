//! Numbered marks on a plot: each on its curve, and where two would meet, the number moved apart with a line to its place.

use crate::output::chart::rect::Rect;
use crate::output::lesson::notes::Placed;

use super::scale::{HIGH, Scale, WIDE};
use crate::base::clock::days;

/// The least plot they must be told apart on, pixels: that of a phone 360 wide.
pub const LEAST: (f64, f64) = (278.0, 170.0);
/// Diameter of a mark with its ring, pixels.
pub const MARK: f64 = 22.0;
/// How far a number may hang over the edge of a plot, pixels: up to the words of the axes.
const OVER_EDGE: f64 = 8.0;
/// A number that is moved keeps as far from its place that the line between them can be seen, pixels.
const APART: f64 = 0.75 * MARK;

/// A mark: the panel, its place and that of its number in shares of the plot, and its words.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// The panel.
    pub panel: usize,
    /// On its curve, from the left and from the top, 0 to 1.
    pub on: (f64, f64),
    /// Where its number stands.
    pub at: (f64, f64),
    /// The words.
    pub words: String,
}

impl Mark {
    /// The space of its number on the least plot, pixels.
    pub fn space(&self) -> Rect {
        let (x, y) = (self.at.0 * LEAST.0, self.at.1 * LEAST.1);
        let half = MARK / 2.0;
        Rect::new(x - half, y - half, x + half, y + half)
    }
    /// The line from its place to its number, as the commands of a path; nothing where the number stands on the curve.
    pub fn leader(&self) -> String {
        if self.at == self.on {
            return String::new();
        }
        let place = |(x, y): (f64, f64)| format!("{:.1} {:.1}", x * WIDE, y * HIGH);
        format!("M{}L{}", place(self.on), place(self.at))
    }
}

/// The marks of a step, each number as near to its place as those before it allow.
pub fn marks(notes: &[Placed], scales: &[Scale]) -> Vec<Mark> {
    let mut placed: Vec<Mark> = Vec::new();
    for note in notes {
        let scale = scales[note.panel];
        let on = (
            scale.x(days(note.minute)) / WIDE,
            scale.y(note.value) / HIGH,
        );
        let mark = |at| Mark {
            panel: note.panel,
            on,
            at,
            words: note.words.clone(),
        };
        let others: Vec<Rect> = (placed.iter())
            .filter(|other| other.panel == note.panel)
            .map(Mark::space)
            .collect();
        let free = |mark: &Mark| {
            let space = mark.space();
            room().holds(&space) && !others.iter().any(|other| other.overlaps(&space))
        };
        let found = around(on).map(mark).find(free);
        placed.push(found.unwrap_or_else(|| mark(on)));
    }
    placed
}

/// Where numbers may stand on the least plot, pixels.
fn room() -> Rect {
    Rect::new(0.0, 0.0, LEAST.0, LEAST.1).grown(OVER_EDGE + SLIP)
}

/// What rounding may move a number over, pixels.
const SLIP: f64 = 1e-9;

/// The place itself, then places ever farther from it: all round, above first.
fn around((x, y): (f64, f64)) -> impl Iterator<Item = (f64, f64)> {
    let step = MARK / 4.0;
    let ring = move |ring: i32| {
        let far = APART + f64::from(ring) * step;
        WAYS.into_iter()
            .map(move |(right, down)| (x + right * far / LEAST.0, y + down * far / LEAST.1))
    };
    std::iter::once((x, y)).chain((0..40).flat_map(ring))
}

/// Eight ways from a place, right and down, the upright ones first.
const WAYS: [(f64, f64); 8] = [
    (0.0, -1.0),
    (0.0, 1.0),
    (1.0, 0.0),
    (-1.0, 0.0),
    (0.8, -0.8),
    (-0.8, -0.8),
    (0.8, 0.8),
    (-0.8, 0.8),
];

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
            for (place, mark) in marks.iter().enumerate() {
                let (day, value) = places[place];
                let on = (scale.x(f64::from(day)) / WIDE, scale.y(value) / HIGH);
                prop_assert_eq!(mark.on, on);
                prop_assert!(room().holds(&mark.space()));
                prop_assert!(!marks[..place].iter().any(|other| other.space().overlaps(&mark.space())));
            }
        }
    }
}
