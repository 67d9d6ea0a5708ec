//! What changes the nights: the air pump's plan and power cuts, as lines through the panels.

use crate::engine::input::TimerLine;

use super::Story;
use super::figure::{Shape, Upright};
use super::power_cuts::{cut_lines, name_cuts};
use super::sheet::{Sheet, bold};
use super::style::{INK, OXYGEN, Pen};
use super::weekly::Weekly;

/// Lines of the air pump's plan that begin after the first days.
fn later_air<'a>(story: &'a Story<'_>, weekly: &Weekly<'_>) -> impl Iterator<Item = &'a TimerLine> {
    let end = weekly.end;
    let lines = story.run.input.air.iter();
    lines.filter(move |l| l.from_day > 0 && l.from_day < end)
}

/// A line at each change of the air pump's plan and at each power cut.
pub fn air_lines(story: &Story<'_>, weekly: &Weekly<'_>) -> Vec<Upright> {
    let air = later_air(story, weekly).map(|line| Upright {
        at: f64::from(line.from_day),
        pen: Pen::hair(OXYGEN).wide(1.4),
    });
    air.chain(cut_lines(story)).collect()
}

/// Whether a line of the plan gives any air.
pub fn is_on(line: &TimerLine) -> bool {
    line.value > 0.0 && line.window.minutes() > 0
}

/// A sign and words at each of those lines.
pub fn name_air(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet, at: usize) {
    for line in later_air(story, weekly) {
        let this = &sheet.figure.panels[at];
        let (x, top) = (this.x(f64::from(line.from_day)), this.frame.top);
        let corners = vec![(x - 5.0, top - 8.5), (x + 5.0, top - 8.5), (x, top - 0.5)];
        sheet.shape(Shape::Fill(corners, OXYGEN, 1.0));
        let words = if is_on(line) {
            format!("air {}–{}", line.window.on, line.window.off)
        } else {
            "no air".to_string()
        };
        let place = (f64::from(line.from_day), sheet.figure.panels[at].up.high);
        sheet.words_at(at, place, vec![bold(&words, INK)]);
    }
    name_cuts(story, sheet, at);
}
