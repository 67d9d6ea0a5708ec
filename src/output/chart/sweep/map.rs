//! The map of one figure over a grid of two values: colours and large numbers, two other figures small in every
//! cell, and the border of a limit as a thick stair.

use crate::analysis::sweep::Sweep;
use crate::output::chart::figure::{Figure, Panel};
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet};

use super::cells::{self, Numbers};
use super::names::Names;
use super::{map_words, names, ramp, stair};

/// The frame of the cells; its left edge leaves room for the names of the rows.
const TOP: f64 = 142.0;
const BOTTOM: f64 = 812.0;
const RIGHT: f64 = 962.0;
/// From the head of the frame up to the path of the rows.
const PATH_UP: f64 = 16.0;
/// Between the names of the rows and the frame.
const TO_FRAME: f64 = 14.0;
/// Most room for the names of the rows.
const NAMES: f64 = 220.0;
/// How far names of columns may stand out at the sides.
const OUT: f64 = 12.0;
/// Left edge of what the colours mean, and the room it has.
const BESIDE: f64 = 988.0;
const ROOM: f64 = 204.0;
/// From the foot of the strip of colours to the words of the border.
const TO_BORDER: f64 = 24.0;

/// Draws it.
pub fn figure(sweep: &Sweep, of: &[usize]) -> Figure {
    let rows = Names::of(&sweep.axes[1], NAMES);
    let left = LEFT + rows.widest + TO_FRAME;
    let frame = Rect::new(left, TOP, RIGHT, BOTTOM);
    let panel = cells::panel(sweep, of[0], frame);
    let numbers = Numbers::fitting(sweep, &panel, of);
    let titles = map_words::titles(sweep, of[0]);
    let sentences = map_words::sentences(sweep, of, &numbers);
    let mut sheet = Sheet::new("map", &titles, &sentences);
    cells::part(&mut sheet, &panel);
    let bordered = bordered(sweep, of);
    if let Some(line) = bordered {
        draw_border(&mut sheet, &panel, sweep, line);
    }
    numbers.write(&mut sheet, &panel, sweep, of[0]);
    names::columns(&mut sheet, &panel, &sweep.axes[0], OUT);
    names::rows(&mut sheet, &panel, &rows, (LEFT, TOP - PATH_UP));
    sheet.figure.panels.push(panel);
    let top = BOTTOM - ramp::HEIGHT - 2.0 * TO_BORDER;
    ramp::upright(&mut sheet, sweep, of[0], (BESIDE, top), ROOM);
    if let Some(line) = bordered {
        let place = (BESIDE, top + ramp::HEIGHT + TO_BORDER);
        ramp::border(&mut sheet, sweep, line, place, ROOM);
    }
    sheet.figure
}

/// The first of the figures that passes a limit on the grid.
fn bordered(sweep: &Sweep, of: &[usize]) -> Option<usize> {
    of.iter()
        .copied()
        .find(|&line| sweep.border(line).is_some())
}

/// Draws the border of a figure, where there is one.
pub fn draw_border(sheet: &mut Sheet, panel: &Panel, sweep: &Sweep, line: usize) {
    if let Some(border) = sweep.border(line) {
        stair::draw(sheet, panel, sweep, line, &border);
    }
}
