//! Which of many curves is which: a column of samples with their words, the first and the last always named. It
//! holds for every panel, so its samples are grey, pale to deep as the curves are in their colours.

use crate::analysis::sweep::Sweep;
use crate::output::chart::figure::{Anchor, Shape};
use crate::output::chart::fonts::Face;
use crate::output::chart::sheet::{MARGIN, Sheet, bold, fitting, small};
use crate::output::chart::style::{INK, MUTED, NAME, Pen, TICK};
use crate::output::sweep::words::setting;

use super::{names, tint};

/// Most samples in a column.
const MOST: usize = 9;
/// From one line to the next.
const LEADING: f64 = 17.0;
/// Length of a sample, and from it to its words.
const SAMPLE: f64 = 22.0;
const TO_WORDS: f64 = 8.0;
/// From the top of the column to the first base line.
const FIRST: f64 = 9.0;

/// Draws the column from a place on.
pub fn draw(sheet: &mut Sheet, sweep: &Sweep, (left, top): (f64, f64)) {
    let (axis, count) = (&sweep.axes[0], sweep.points.len());
    let room = MARGIN - left;
    let mut baseline = top + FIRST - LEADING;
    for line in names::folded(axis.words(), room, |line| bold(line, INK)) {
        let shorter = axis.last_name().to_string();
        let line = fitting(&[line, shorter], Face::SemiBold, NAME, room);
        baseline += LEADING;
        sheet.say(vec![bold(&line, INK)], Anchor::Start, left, baseline);
    }
    if axis.name.is_some() {
        let path = [axis.path.clone(), axis.last_name().to_string()];
        let path = fitting(&path, Face::Regular, TICK, room);
        baseline += LEADING;
        sheet.say(vec![small(&path, MUTED)], Anchor::Start, left, baseline);
    }
    let stride = count.div_ceil(MOST);
    for number in names::named(count, stride) {
        baseline += LEADING;
        let y = baseline - 4.5;
        let pen = Pen::curve(tint::of_curve(INK, number, count));
        sheet.shape(Shape::Path(vec![(left, y), (left + SAMPLE, y)], pen));
        let words = [setting(axis, number)];
        let words = fitting(&words, Face::Regular, TICK, room - SAMPLE - TO_WORDS);
        let x = left + SAMPLE + TO_WORDS;
        sheet.say(vec![small(&words, INK)], Anchor::Start, x, baseline);
    }
}
