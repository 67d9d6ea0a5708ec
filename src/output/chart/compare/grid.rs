//! Where the small panels stand: as many rows as plans, four columns.

use crate::output::chart::axis::{Axis, Scale, Tick};
use crate::output::chart::rect::Rect;

use super::strip;

/// Left edges of the columns, and their width.
const LEFTS: [f64; 4] = [250.0, 488.0, 726.0, 964.0];
const WIDTH: f64 = 176.0;
/// Top of the first row.
const TOP: f64 = 168.0;
/// Between two rows: names of ticks and marks of changes.
const GAP: f64 = 28.0;
/// Under the last row: the names of days.
const FOOT: f64 = 30.0;
/// Lowest edge of what is on the page.
const BOTTOM: f64 = 886.0;
/// A panel of two plans would be taller than it is wide.
const TALLEST: f64 = 215.0;
/// More plans leave no room for the strip of numbers; then their names carry some.
const MOST_WITH_STRIP: usize = 5;
/// Most parts of the axis of days.
const MOST_PARTS: u32 = 5;
/// Days between two named days.
const STRIDES: [u32; 6] = [1, 2, 7, 14, 28, 56];

/// The grid of a number of plans.
#[derive(Debug, Clone, Copy)]
pub struct Grid {
    rows: usize,
    height: f64,
}

impl Grid {
    /// For so many plans.
    pub fn of(rows: usize) -> Grid {
        let strip = if rows <= MOST_WITH_STRIP {
            strip::height(rows)
        } else {
            0.0
        };
        let room = BOTTOM - strip - FOOT - TOP + GAP;
        let height = (room / rows as f64 - GAP).min(TALLEST);
        Grid { rows, height }
    }
    /// Whether there is room for numbers under it.
    pub fn has_strip(&self) -> bool {
        self.rows <= MOST_WITH_STRIP
    }
    /// The frame of a panel.
    pub fn frame(&self, row: usize, column: usize) -> Rect {
        let top = TOP + row as f64 * (self.height + GAP);
        let left = LEFTS[column];
        Rect::new(left, top, left + WIDTH, top + self.height)
    }
    /// Whether a row is the last one.
    pub fn is_last(&self, row: usize) -> bool {
        row + 1 == self.rows
    }
    /// Lower edge of all, the names of days included.
    pub fn end(&self) -> f64 {
        self.frame(self.rows - 1, 0).bottom + FOOT
    }
}

/// The axis of the days of a run, named where there is room.
pub fn days(last_day: u32) -> Axis {
    let end = last_day + 1;
    let stride = STRIDES
        .into_iter()
        .find(|stride| end / stride <= MOST_PARTS);
    let stride = stride.unwrap_or_else(|| end.div_ceil(MOST_PARTS));
    let named = (0..=end).step_by(stride as usize);
    Axis {
        low: 0.0,
        high: f64::from(end),
        scale: Scale::Even,
        ticks: named
            .map(|day| Tick {
                value: f64::from(day),
                words: day.to_string(),
            })
            .collect(),
    }
}
