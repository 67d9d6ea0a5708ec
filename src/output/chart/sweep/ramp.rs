//! What the colours of a map mean: a strip from pale to deep with some values, upright or level, and the words of
//! the border.

use crate::analysis::compare::lines::Line;
use crate::analysis::sweep::Sweep;
use crate::output::chart::axis::{Axis, Tick};
use crate::output::chart::figure::{Anchor, Shape};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::{Point, Rect};
use crate::output::chart::sheet::{Sheet, bold, fitting, small};
use crate::output::chart::signs::corners;
use crate::output::chart::style::{BASE, Colour, INK, MUTED, NAME, Pen};
use crate::output::sweep::range::is_flat;
use crate::output::sweep::words;
use crate::output::text::words::capital;

use super::names::folded;
use super::{stair, tint};

/// In place of a strip where a figure is the same at every point.
const SAME: &str = "the same everywhere";
/// Pieces of a strip.
const PIECES: usize = 64;
/// Thickness of a strip, and the length of a tick.
const THICK: f64 = 22.0;
const TICK_LENGTH: f64 = 6.0;
/// From the strip to the names of its ticks.
const TO_NAMES: f64 = 10.0;
/// From the middle of a name to its base line.
const TO_MIDDLE: f64 = 4.5;
/// From one line to the next.
const LEADING: f64 = 17.0;
/// Length of the sample of the border, and from it to its words.
const SAMPLE: f64 = 22.0;
const TO_WORDS: f64 = 8.0;

/// An upright strip with its title over it, from a left edge and a top on, in so much room.
pub fn upright(sheet: &mut Sheet, sweep: &Sweep, line: usize, (left, top): (f64, f64), room: f64) {
    let figure = &sweep.lines[line];
    let name = fitting(&[capital(figure.short)], Face::SemiBold, NAME, room);
    sheet.say(vec![bold(&name, INK)], Anchor::Start, left, top);
    sheet.say(
        vec![small(words::unit(figure), MUTED)],
        Anchor::Start,
        left,
        top + LEADING,
    );
    let space = Rect::new(left, top + 2.0 * LEADING, left + THICK, top + HEIGHT);
    if is_flat(figure) {
        let y = space.top + LEADING;
        return sheet.say(vec![small(SAME, MUTED)], Anchor::Start, left, y);
    }
    let scale = tint::scale(figure, sweep.last_day);
    strip(sheet, &space, tint::hue(figure.name), |share| {
        let y = space.bottom - share * space.height();
        let next = (y - space.height() / PIECES as f64 - 0.5).max(space.top);
        Rect::new(space.left, next, space.right, y)
    });
    for tick in named(&scale, figure, sweep.last_day) {
        let y = space.bottom - scale.place(tick.value) * space.height();
        name_beside(sheet, &tick, (space.right, y.floor() + 0.5));
    }
}

fn name_beside(sheet: &mut Sheet, tick: &Tick, (x, y): Point) {
    let ends = vec![(x, y), (x + TICK_LENGTH, y)];
    sheet.shape(Shape::Path(ends, Pen::hair(BASE)));
    let words = vec![small(&tick.words, MUTED)];
    sheet.say(words, Anchor::Start, x + TO_NAMES, y + TO_MIDDLE);
}

/// Height of an upright strip with its title.
pub const HEIGHT: f64 = 190.0;

/// A level strip with its ticks named below.
pub fn level(sheet: &mut Sheet, sweep: &Sweep, line: usize, space: Rect) {
    let figure = &sweep.lines[line];
    if is_flat(figure) {
        return sheet.say(
            vec![small(SAME, MUTED)],
            Anchor::Start,
            space.left,
            space.bottom,
        );
    }
    let scale = tint::scale(figure, sweep.last_day);
    strip(sheet, &space, tint::hue(figure.name), |share| {
        let x = space.left + share * space.width();
        let next = (x + space.width() / PIECES as f64 + 0.5).min(space.right);
        Rect::new(x, space.top, next, space.bottom)
    });
    for tick in named(&scale, figure, sweep.last_day) {
        let x = (space.left + scale.place(tick.value) * space.width()).floor() + 0.5;
        let ends = vec![(x, space.bottom), (x, space.bottom + TICK_LENGTH)];
        sheet.shape(Shape::Path(ends, Pen::hair(BASE)));
        let words = vec![small(&tick.words, MUTED)];
        sheet.say_clear(
            words,
            Anchor::Middle,
            x,
            space.bottom + TICK_LENGTH + LEADING - 3.0,
        );
    }
}

fn strip(sheet: &mut Sheet, space: &Rect, hue: Colour, piece: impl Fn(f64) -> Rect) {
    for number in 0..PIECES {
        let share = number as f64 / PIECES as f64;
        let colour = tint::at_place(hue, share + 0.5 / PIECES as f64);
        sheet.shape(Shape::Fill(corners(&piece(share)), colour, 1.0));
    }
    let mut outline = corners(&space.grown(0.5));
    outline.push(outline[0]);
    sheet.shape(Shape::Path(outline, Pen::hair(BASE)));
}

/// The ticks of a scale; of days the one after the last is no day of the run.
fn named(scale: &Axis, line: &Line, last_day: u32) -> Vec<Tick> {
    let is_day = |tick: &&Tick| line.unit != "day" || tick.value <= f64::from(last_day);
    scale.ticks.iter().filter(is_day).cloned().collect()
}

/// What the border means, from a place on, in so much room; in more lines where one is too short.
pub fn border(sheet: &mut Sheet, sweep: &Sweep, line: usize, (left, y): (f64, f64), room: f64) {
    let Some(border) = sweep.border(line) else {
        return;
    };
    let kept = words::kept(&sweep.lines[line], border.at);
    let side = stair::kept_side(sweep, line, &border);
    stair::sample(sheet, (left, y), SAMPLE, side.is_none());
    let told = match side {
        Some(side) => format!("{side} the line: {kept}"),
        None => format!("where the ticks point: {kept}"),
    };
    let lines = folded(&told, room - SAMPLE - TO_WORDS, |line| small(line, INK));
    for (number, words) in lines.iter().enumerate() {
        let (x, y) = (left + SAMPLE + TO_WORDS, y + LEADING * number as f64);
        sheet.say(vec![small(words, INK)], Anchor::Start, x, y + TO_MIDDLE);
    }
}
