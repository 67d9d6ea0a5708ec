//! A scale under rows: rules between them, a line at nothing, the names of its ticks and its own name below.

use super::axis::{Axis, Scale};
use super::figure::{Anchor, Panel, Shape, Upright};
use super::rect::Rect;
use super::sheet::{LEFT, Sheet, small};
use super::style::{BASE, GRID, MUTED, Pen};

/// From the last row down to the names of the ticks.
pub const TO_TICKS: f64 = 20.0;
/// From the last row down to the name of the scale.
const TO_NAME: f64 = 40.0;

/// An empty scale.
pub struct RowScale<'a> {
    /// Its left and its right edge.
    pub across: (f64, f64),
    /// Upper edge of the first row.
    pub top: f64,
    /// Height of a row.
    pub tall: f64,
    /// How many rows.
    pub rows: usize,
    /// Right end of the rules between rows.
    pub right_end: f64,
    /// Its ticks.
    pub axis: Axis,
    /// What its numbers are.
    pub name: &'a str,
}

impl RowScale<'_> {
    /// Lower edge of the last row.
    pub fn bottom(&self) -> f64 {
        self.top + self.tall * self.rows as f64
    }

    /// Draws it; its place among the panels of the sheet. A row is one unit high, the first begins at 0.
    pub fn draw(self, sheet: &mut Sheet) -> usize {
        let ((left, right), bottom) = (self.across, self.bottom());
        let down = Axis {
            low: self.rows as f64,
            high: 0.0,
            scale: Scale::Even,
            ticks: Vec::new(),
        };
        for row in 0..=self.rows {
            let y = (self.top + self.tall * row as f64).floor() + 0.5;
            let ends = vec![(LEFT, y), (self.right_end, y)];
            sheet.shape(Shape::Path(ends, Pen::hair(GRID)));
        }
        let mut panel = Panel::new(Rect::new(left, self.top, right, bottom), self.axis, down);
        panel.uprights.push(Upright {
            at: 0.0,
            pen: Pen::hair(BASE),
        });
        for tick in &panel.across.ticks {
            let (words, x) = (vec![small(&tick.words, MUTED)], panel.x(tick.value));
            sheet.say(words, Anchor::Middle, x, bottom + TO_TICKS);
        }
        panel.title = self.name.to_string();
        let (words, middle) = (vec![small(self.name, MUTED)], (left + right) / 2.0);
        sheet.say(words, Anchor::Middle, middle, bottom + TO_NAME);
        sheet.figure.panels.push(panel);
        sheet.figure.panels.len() - 1
    }
}
