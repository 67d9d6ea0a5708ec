//! A row's bar of days, its standard error, the range of pairs, and its number beside them.

use crate::analysis::levers::Pulled;

use super::figure::{Anchor, Shape, Span, width_of};
use super::levers::BESIDE;
use super::rect::Rect;
use super::sheet::{Sheet, bold, plain};
use super::signs::corners;
use super::style::{BASE, CHANGE, INK, MUTED, Pen, WHITE};
use super::words::number;

/// Thickness of a bar, pixels.
pub const BAR_WIDTH: f64 = 11.0;
/// The standard error.
pub const ERROR: Pen = Pen::hair(INK).wide(3.0);
/// The range of pairs.
pub const RANGE: Pen = Pen::hair(INK);
/// Half the height of the ends of a range, pixels.
const END: f64 = 3.5;
/// From the range to its number, pixels.
const GAP: f64 = 9.0;
/// How much a bar covers.
const COVER: f64 = 0.75;
/// What is said of a lever that moves the ready day by under half a day.
const NOTHING: &str = "does nothing here";

/// A row's place on the page: left and right end of what is drawn there, and its height.
struct Drawn {
    low: f64,
    high: f64,
    y: f64,
}

/// The plan itself: a disc on nothing gained.
pub fn plan_mark(sheet: &mut Sheet, panel: usize, row: usize) {
    let place = place(sheet, panel, row, 0.0);
    sheet.shape(Shape::Disc(place, 4.0, INK));
}

/// A lever: a bar where it does something, an open ring where it does not.
pub fn bar(sheet: &mut Sheet, panel: usize, row: usize, pulled: &Pulled) {
    let paired = &pulled.paired;
    let x = |days: f64| place(sheet, panel, row, days).0;
    let (zero, y) = place(sheet, panel, row, 0.0);
    let [low, high] = paired.range_days.map(x);
    let mean = x(paired.mean_days);
    let error = [-1.0, 1.0].map(|side| x(paired.mean_days + side * paired.standard_error_days));
    if pulled.does_something() {
        let colour = if mean > zero { CHANGE } else { BASE };
        let half = BAR_WIDTH / 2.0;
        let space = Rect::new(zero.min(mean), y - half, zero.max(mean), y + half);
        sheet.shape(Shape::Fill(corners(&space), colour, COVER));
    }
    range(sheet, [low, high], y);
    if pulled.does_something() {
        sheet.shape(Shape::Path(error.map(|x| (x, y)).to_vec(), ERROR));
    } else {
        sheet.shape(Shape::Disc((mean, y), 4.4, MUTED));
        sheet.shape(Shape::Disc((mean, y), 3.0, WHITE));
    }
    let drawn = Drawn {
        low: low.min(error[0]).min(mean - END),
        high: high.max(error[1]).max(mean + END),
        y,
    };
    say(sheet, panel, &drawn, pulled);
}

/// A fine line from end to end, with short uprights; nothing where all pairs are alike.
fn range(sheet: &mut Sheet, [low, high]: [f64; 2], y: f64) {
    if high - low < 1.0 {
        return;
    }
    let level = (y - 0.5).round() + 0.5;
    sheet.shape(Shape::Path(vec![(low, level), (high, level)], RANGE));
    for x in [low, high] {
        let x = (x - 0.5).round() + 0.5;
        let ends = vec![(x, level - END), (x, level + END)];
        sheet.shape(Shape::Path(ends, RANGE));
    }
}

/// The number, on the side to which the ready day moves; a lever that does nothing is told on the side where
/// there is room, or by its number where there is on neither.
fn say(sheet: &mut Sheet, panel: usize, drawn: &Drawn, pulled: &Pulled) {
    let (right, left) = (drawn.high + GAP, drawn.low - GAP);
    let days = pulled.paired.mean_days;
    if pulled.does_something() {
        let (anchor, x) = if days > 0.0 {
            (Anchor::Start, right)
        } else {
            (Anchor::End, left)
        };
        return sheet.say(vec![size_of(pulled)], anchor, x, drawn.y + 4.5);
    }
    let words = vec![plain(NOTHING, MUTED)];
    let frame = sheet.figure.panels[panel].frame;
    let wide = width_of(&words);
    let (words, anchor, x) = if right + wide <= frame.right + BESIDE {
        (words, Anchor::Start, right)
    } else if left - wide >= frame.left - BESIDE {
        (words, Anchor::End, left)
    } else {
        (vec![plain(&number(days, 1), MUTED)], Anchor::Start, right)
    };
    sheet.say(words, anchor, x, drawn.y + 4.5);
}

/// `3.4`; `~0.7` where that may be chance.
fn size_of(pulled: &Pulled) -> Span {
    let size = number(pulled.paired.mean_days.abs(), 1);
    match pulled.paired.is_clear() {
        true => bold(&size, INK),
        false => plain(&format!("~{size}"), INK),
    }
}

fn place(sheet: &Sheet, panel: usize, row: usize, days: f64) -> (f64, f64) {
    sheet.figure.panels[panel].at((days, row as f64 + 0.5))
}
