//! Small panels side by side: three in a row, two rows.

use crate::analysis::study::findings::factor::Factor;
use crate::analysis::study::input::Input;
use crate::output::chart::compare::furnishing::name_heights;
use crate::output::chart::figure::{Anchor, Panel, Span, width_of};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, fitting, small};
use crate::output::chart::style::{INK, MUTED, SENTENCE};
use crate::output::study::words::name;

/// Most panels.
pub const MOST: usize = 6;
/// Columns of panels; their width, the gap between them, the left edge of the first.
const COLUMNS: usize = 3;
const WIDE: f64 = 300.0;
const GAP: f64 = 74.0;
/// Tops of the rows of panels, and their height.
const TOPS: [f64; 2] = [162.0, 508.0];
const TALL: f64 = 230.0;
/// From a frame up to its title; from its foot to what stands below the names.
const TITLE_UP: f64 = 16.0;
const BELOW: f64 = 42.0;
/// Room of a title.
const TITLE: f64 = WIDE + GAP - 24.0;

/// The frame of a panel by its number.
pub fn frame(number: usize) -> Rect {
    let left = LEFT + 16.0 + (number % COLUMNS) as f64 * (WIDE + GAP);
    let top = TOPS[number / COLUMNS];
    Rect::new(left, top, left + WIDE, top + TALL)
}

/// Adds a panel with its title, the names of its ticks and a line below; its place among the panels of the sheet.
pub fn add(
    sheet: &mut Sheet,
    mut panel: Panel,
    factor: &Factor,
    input: &Input,
    below: &str,
) -> usize {
    let frame = panel.frame;
    let titles = [name(factor), input.name.clone()];
    let title = fitting(&titles, Face::SemiBold, SENTENCE, TITLE);
    panel.title = title.clone();
    let title = Span::new(&title, Face::SemiBold, SENTENCE, INK);
    sheet.say(vec![title], Anchor::Start, frame.left, frame.top - TITLE_UP);
    name_heights(sheet, &panel);
    let axis = panel.across.clone();
    sheet.figure.panels.push(panel);
    let at = sheet.figure.panels.len() - 1;
    sheet.ticks_below(at, &axis);
    let unit = match input.shown_unit() {
        "1" => "",
        unit => unit,
    };
    let left = vec![small(unit, MUTED)];
    let words = fitting(
        &[below.to_string()],
        Face::Regular,
        super::super::style::TICK,
        WIDE - width_of(&left) - 12.0,
    );
    sheet.say(left, Anchor::Start, frame.left, frame.bottom + BELOW);
    if !below.is_empty() {
        sheet.say(
            vec![small(&words, INK)],
            Anchor::End,
            frame.right,
            frame.bottom + BELOW,
        );
    }
    at
}
