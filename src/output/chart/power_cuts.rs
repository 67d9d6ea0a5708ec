//! Power cuts as lines through a panel.

use crate::base::clock::days;
use crate::engine::input::PowerCut;

use super::Story;
use super::figure::Upright;
use super::sheet::{Sheet, bold};
use super::signs::step_mark;
use super::style::{INK, Pen};
use super::words::span;

fn cuts<'a>(story: &'a Story<'_>) -> impl Iterator<Item = &'a PowerCut> {
    let end = story.run.input.end_minute();
    let cuts = story.run.input.power_cuts.iter();
    cuts.filter(move |cut| cut.from < end)
}

/// A line at each cut.
pub fn cut_lines(story: &Story<'_>) -> impl Iterator<Item = Upright> {
    cuts(story).map(|cut| Upright {
        at: days(cut.from),
        pen: Pen::hair(INK),
    })
}

/// A sign and words at each of those lines.
pub fn name_cuts(story: &Story<'_>, sheet: &mut Sheet, at: usize) {
    for cut in cuts(story) {
        let place = (days(cut.from), sheet.figure.panels[at].up.high);
        let (x, top) = sheet.figure.panels[at].at(place);
        sheet.shape(step_mark((x, top - 6.0)));
        let words = format!("power cut, {}", span(cut.until.saturating_sub(cut.from)));
        sheet.words_at(at, place, vec![bold(&words, INK)]);
    }
}
