//! Ripe is a crossing: what the microbes of each step could oxidise against what comes in.

use crate::analysis::coming_in::coming_in;
use crate::analysis::ready::OxidationStep;

use super::Story;
use super::axis::{Axis, decades};
use super::capacity_steps::{Crossing, Step, crossings, steps};
use super::capacity_words::{sentences, titles};
use super::decade_lines::drawable;
use super::ends::{EndName, name_ends};
use super::figure::{Figure, Form, Limit, Upright};
use super::key::Key;
use super::rect::Point;
use super::sheet::{Sheet, bold, plain};
use super::style::{INK, MUTED, Pen};
use super::weekly::Weekly;
use super::words::short;

/// Most decades on the axis: what lies further down plays no part.
const DECADES: i32 = 4;

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let load = coming_in(story.run);
    let steps = steps(story, &load);
    let mut sheet = Sheet::new(
        "capacity",
        &titles(story, &steps, &load),
        &story.said_of_central(sentences(story, &steps, &load)),
    );
    sheet.key(&[
        Key::Line(Pen::curve(MUTED), "what the microbes could oxidise"),
        Key::Line(Pen::dotted(INK), "what comes in"),
        Key::Line(Pen::LIMIT, feed_name(story)),
    ]);
    let feed = story.verdict.feed_mg_n_per_day;
    let all = steps.iter().flat_map(|s| &s.capacity).chain(&load);
    let up = decades(all.map(|p| p.1).chain([feed]), DECADES);
    for (step, room) in steps.iter().zip([(158.0, 444.0), (536.0, 826.0)]) {
        let at = draw_step(story, &weekly, &mut sheet, step, &load, &up, room);
        if step.step == OxidationStep::Nitrite {
            weekly.foot(&mut sheet, at);
        }
    }
    sheet.figure
}

fn feed_name(story: &Story<'_>) -> &'static str {
    if story.verdict.feed_is_planned {
        "planned feed"
    } else {
        "feed of a usual stock"
    }
}

fn draw_step(
    story: &Story<'_>,
    weekly: &Weekly<'_>,
    sheet: &mut Sheet,
    step: &Step,
    load: &[Point],
    up: &Axis,
    (top, bottom): (f64, f64),
) -> usize {
    let feed = story.verdict.feed_mg_n_per_day;
    let mut panel = weekly.panel(top, bottom, up.clone());
    let (pen, load_pen) = (Pen::curve(step.colour), Pen::dotted(INK));
    panel.lines = drawable("what comes in", load, up, load_pen);
    panel
        .lines
        .extend(drawable("capacity", &step.capacity, up, pen));
    if up.holds(feed) {
        panel.limits = vec![Limit::new(
            feed_name(story),
            feed,
            weekly.across(),
            Pen::LIMIT,
        )];
    }
    let crossings = crossings(story, step, up);
    panel.uprights = crossings
        .iter()
        .filter(|crossing| crossing.is_load)
        .map(|crossing| Upright {
            at: crossing.at.0,
            pen: Pen::hair(INK),
        })
        .collect();
    let unit = unit_words(step, load, up);
    let at = sheet.panel(panel, step.title, &unit, 14.0);
    mark_crossings(sheet, at, crossings);
    weekly.name_absences(sheet, at);
    name_lines(story, sheet, at, step, load);
    at
}

/// Unit of the panel; says so when a part of a curve lies under the floor.
fn unit_words(step: &Step, load: &[Point], up: &Axis) -> String {
    let unit = "mg N a day; each line is ten times the one below";
    let mut all = step.capacity.iter().chain(load);
    if all.any(|p| !up.holds(p.1)) {
        format!("{unit}, what is under {} is not drawn", up.ticks[0].words)
    } else {
        unit.to_string()
    }
}

/// Discs where the capacity first covers something for good, with words.
fn mark_crossings(sheet: &mut Sheet, at: usize, crossings: Vec<Crossing>) {
    for crossing in &crossings {
        sheet.mark(at, crossing.at, Form::Disc, INK);
    }
    for crossing in crossings {
        let words = if crossing.is_load {
            bold(&crossing.words, INK)
        } else {
            plain(&crossing.words, INK)
        };
        sheet.words_at(at, crossing.at, vec![words]);
    }
}

fn name_lines(story: &Story<'_>, sheet: &mut Sheet, at: usize, step: &Step, load: &[Point]) {
    let up = sheet.figure.panels[at].up.clone();
    let feed = story.verdict.feed_mg_n_per_day;
    let mut names = Vec::new();
    let mut name = |words: &str, points: &[Point], pen| {
        if let Some(end) = points.last().filter(|p| up.holds(p.1)) {
            names.push(EndName::curve(words, short(end.1), end.1, pen));
        }
    };
    name(step.name(), &step.capacity, Pen::curve(step.colour));
    name("comes in", load, Pen::dotted(INK));
    if up.holds(feed) {
        let words = if story.verdict.feed_is_planned {
            "planned feed"
        } else {
            "usual feed"
        };
        names.push(EndName::limit(words, short(feed), feed, Pen::LIMIT));
    }
    name_ends(sheet, at, &names);
    if step.capacity.iter().all(|p| p.1 <= 0.0) {
        let frame = sheet.figure.panels[at].frame;
        let x = (frame.left + frame.right) / 2.0;
        let words = vec![plain("no microbes of this step", MUTED)];
        sheet.say_if_free(at, words, x, frame.bottom - 16.0);
    }
}
