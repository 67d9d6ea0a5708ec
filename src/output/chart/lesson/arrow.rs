//! Words that point to a place of a curve: as near as there is room, with an arrow that runs through no other words.

use crate::output::chart::figure::{Shape, width_of};
use crate::output::chart::fonts::{ASCENT, DESCENT};
use crate::output::chart::label::{Anchor, Label};
use crate::output::chart::rect::{Point, Rect};
use crate::output::chart::sheet::{Sheet, bold, plain};
use crate::output::chart::style::{INK, MUTED, NAME, Pen};

/// Least distance of words from their place, so that the arrow can be seen, pixels.
const APART: f64 = 22.0;
/// Where the arrow ends before the place and begins after the words, pixels.
const BEFORE_MARK: f64 = 7.0;
const AFTER_WORDS: f64 = 3.0;
/// Length and half width of its head, pixels.
const HEAD: (f64, f64) = (8.0, 3.2);
/// How many places are tried before words are left out.
const TRIES: usize = 40;

/// Writes words with an arrow to a place of a panel; what is of the base is set lighter. Without room they are noted
/// as left out.
pub fn words_to(sheet: &mut Sheet, panel: usize, at: Point, words: &str, light: bool) {
    let spans = vec![match light {
        true => plain(words, MUTED),
        false => bold(words, INK),
    }];
    let mark = sheet.figure.panels[panel].at(at);
    let size = (width_of(&spans), (ASCENT + DESCENT) * NAME);
    let Some(space) = free_place(sheet, panel, mark, size) else {
        sheet.leave_out(&spans);
        return;
    };
    point(sheet, space.nearest(mark), mark);
    sheet.say(spans, Anchor::Start, space.left, space.top + ASCENT * NAME);
}

/// The nearest free place whose arrow crosses no words.
fn free_place(sheet: &Sheet, panel: usize, mark: Point, size: (f64, f64)) -> Option<Rect> {
    let room = sheet.figure.panels[panel].frame.grown(-4.0);
    let mut taken = sheet.taken(panel);
    // arrows that are there already are kept off as curves are
    taken.curves.extend(arrows(sheet, &room));
    let (x, y) = mark;
    taken
        .boxes
        .push(Rect::new(x - APART, y - APART, x + APART, y + APART));
    for _ in 0..TRIES {
        let space = taken.beside(mark, size, &room)?;
        let from = space.nearest(mark);
        let crosses = |label: &Label| label.space.grown(1.0).is_crossed_by(from, mark);
        if !sheet.figure.labels.iter().any(crosses) {
            return Some(space);
        }
        taken.boxes.push(space.grown(-size.1 / 3.0));
    }
    None
}

/// The lines of arrows and leaders inside a panel.
fn arrows(sheet: &Sheet, room: &Rect) -> Vec<Vec<Point>> {
    let shapes = sheet.figure.shapes.iter();
    let inside = |path: &Vec<Point>| {
        path.iter()
            .all(|&(x, y)| room.grown(8.0).holds(&Rect::new(x, y, x, y)))
    };
    let paths = shapes.filter_map(|shape| match shape {
        Shape::Path(path, _) if inside(path) => Some(path.clone()),
        _ => None,
    });
    paths.collect()
}

/// An arrow from words to a mark.
fn point(sheet: &mut Sheet, from: Point, to: Point) {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = (dx * dx + dy * dy).sqrt();
    if length < APART / 2.0 {
        return;
    }
    let along = (dx / length, dy / length);
    let on = |distance: f64| (from.0 + along.0 * distance, from.1 + along.1 * distance);
    let tip = on(length - BEFORE_MARK);
    let neck = on(length - BEFORE_MARK - HEAD.0);
    sheet.shape(Shape::Path(vec![on(AFTER_WORDS), neck], Pen::hair(INK)));
    let across = (-along.1 * HEAD.1, along.0 * HEAD.1);
    let corners = vec![
        tip,
        (neck.0 + across.0, neck.1 + across.1),
        (neck.0 - across.0, neck.1 - across.1),
    ];
    sheet.shape(Shape::Fill(corners, INK, 1.0));
}
