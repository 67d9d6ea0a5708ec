//! The order of dropping: a numbered circle per change over its day, filled where it may go.

use crate::analysis::change_worth::ChangeWorth;
use crate::base::clock::days;
use crate::output::chart::figure::{Anchor, Shape, Span};
use crate::output::chart::fonts::Face;
use crate::output::chart::labels::spread;
use crate::output::chart::sheet::{LEFT, RIGHT, Sheet, plain};
use crate::output::chart::style::{CHANGE, INK, MUTED, Pen, SENTENCE, TICK, WHITE};

/// Base line of the title, height of the circles' middles, and the ends of the leaders.
const TITLE: f64 = 115.0;
const MIDDLE: f64 = 148.0;
const LEADER: [f64; 3] = [165.0, 178.0, 186.0];
/// Radius of a circle, and of the hole of an open one, pixels.
const RADIUS: f64 = 10.5;
const HOLE: f64 = 9.1;
/// From one circle to the next, pixels.
const APART: f64 = 25.0;
/// From the middle of a circle to the base line of its number, pixels.
const SINK: f64 = 4.4;

/// The circles, as many as fit: first those that may go, then those that are missed least.
pub fn circles(sheet: &mut Sheet, panel: usize, worth: &ChangeWorth) {
    let room = ((RIGHT - LEFT) / APART) as usize + 1;
    let order = worth.drop.order();
    let (fit, more) = order.split_at(order.len().min(room));
    title(sheet, worth.drop.last().is_some(), more.len());
    let this = &sheet.figure.panels[panel];
    let x = |&change: &usize| this.x(days(worth.changes[change].minute));
    let wanted: Vec<f64> = fit.iter().map(x).collect();
    let placed = spread(&wanted, APART, LEFT + RADIUS, RIGHT - RADIUS);
    for (rank, ((&change, wanted), placed)) in fit.iter().zip(wanted).zip(placed).enumerate() {
        leader(sheet, placed, wanted);
        circle(sheet, placed, rank + 1, worth.drop.drops(change));
    }
}

fn title(sheet: &mut Sheet, some_go: bool, more: usize) {
    let (head, remark) = match some_go {
        true => (
            "Drop in this order",
            "filled: may go; open: stays, first those that could go alone; each kind by the days later without it",
        ),
        false => (
            "From the least worth to the most",
            "by the days later without it; open: stays",
        ),
    };
    let remark = match more {
        0 => remark.to_string(),
        more => format!("{remark}; {more} that are missed more have no number"),
    };
    let head = Span::new(head, Face::SemiBold, SENTENCE, INK);
    sheet.say(
        vec![head, plain(&remark, MUTED)],
        Anchor::Start,
        LEFT,
        TITLE,
    );
}

/// Down from a circle, slanting to its day.
fn leader(sheet: &mut Sheet, placed: f64, wanted: f64) {
    let [out, slant, end] = LEADER;
    let path = vec![
        (placed, MIDDLE + RADIUS),
        (placed, out),
        (wanted, slant),
        (wanted, end),
    ];
    sheet.shape(Shape::Path(path, Pen::hair(CHANGE)));
}

fn circle(sheet: &mut Sheet, x: f64, number: usize, goes: bool) {
    sheet.shape(Shape::Disc((x, MIDDLE), RADIUS, CHANGE));
    if !goes {
        sheet.shape(Shape::Disc((x, MIDDLE), HOLE, WHITE));
    }
    let colour = if goes { WHITE } else { CHANGE };
    let number = Span::new(&number.to_string(), Face::SemiBold, TICK, colour);
    sheet.say(vec![number], Anchor::Middle, x, MIDDLE + SINK);
}
