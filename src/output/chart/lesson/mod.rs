//! The chart of a lesson: one step beside the one it is held against, with notes where the run says.
//!
//! ```text
//! hues    colour and line of each curve      foot    weeks or hours under the panels
//! arrow   words that point to a place        titles  the result in words
//! ```

mod arrow;
pub mod foot;
pub mod hues;
mod titles;

use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::taught::Taught;
use crate::analysis::lesson::trace::Panel as Shown;
use crate::base::clock::days;
use crate::output::lesson::notes::{Placed, placed};

use super::axis::{Axis, about, from_zero};
use super::ends::{EndName, name_ends};
use super::figure::{Figure, Form, Limit, Line, Panel};
use super::key::Key;
use super::rect::{Point, Rect};
use super::sheet::{LEFT, RIGHT, Sheet};
use super::style::{INK, Pen};
use super::words::{number, trimmed};
use foot::Foot;

/// Where the panels begin and end on the page, and the room between two, pixels.
const TOP: f64 = 160.0;
const BOTTOM: f64 = 826.0;
const BETWEEN: f64 = 58.0;

/// The chart of a step.
///
/// # Errors
/// When the numbers of the step support no sentence.
pub fn figure(taught: &Taught<'_>, step: usize) -> Result<Figure, Unsupported> {
    let drawing = Drawing { taught, step };
    let (titles, sentences) = titles::of(taught, step)?;
    let mut sheet = Sheet::new("lesson", &titles, &sentences);
    drawing.key(&mut sheet);
    let notes = placed(taught, step);
    for place in 0..taught.lesson.panels.len() {
        drawing.panel(&mut sheet, place, &notes);
    }
    Ok(sheet.figure)
}

/// A step that is drawn.
#[derive(Clone, Copy)]
struct Drawing<'a> {
    taught: &'a Taught<'a>,
    step: usize,
}

impl Drawing<'_> {
    fn is_base(&self) -> bool {
        self.step == self.taught.lesson.base
    }
    fn key(&self, sheet: &mut Sheet) {
        let lesson = self.taught.lesson;
        let mut keys = vec![Key::Line(Pen::curve(INK), lesson.steps[self.step].label)];
        if !self.is_base() {
            let base = lesson.steps[lesson.base].label;
            keys.push(Key::Line(hues::base(INK), base));
        }
        let foot = Foot::of(self.taught, self.step);
        if lesson.panels.iter().any(|panel| !panel.lines.is_empty()) {
            keys.push(Key::Line(Pen::LIMIT, "limit or need"));
        }
        keys.extend(foot.keys());
        sheet.key(&keys);
    }
    fn panel(&self, sheet: &mut Sheet, place: usize, notes: &[Placed]) {
        let lesson = self.taught.lesson;
        let shown = &lesson.panels[place];
        let count = lesson.panels.len() as f64;
        let height = (BOTTOM - TOP - (count - 1.0) * BETWEEN) / count;
        let top = TOP + place as f64 * (height + BETWEEN);
        let foot = Foot::of(self.taught, self.step);
        let frame = Rect::new(LEFT, top, RIGHT, top + height);
        let up = axis(self.taught, place, &[self.step, lesson.base]);
        let mut panel = Panel::new(frame, foot.axis(), up);
        foot.shade(&mut panel);
        let mut names = self.curves(&mut panel, shown);
        names.extend(self.levels(&mut panel, shown));
        let at = sheet.panel(panel, shown.title, shown.traces[0].unit(), 14.0);
        if place == 0 {
            foot.mark_changes(sheet, at);
        }
        foot.write(sheet, at, place + 1 == lesson.panels.len());
        name_ends(sheet, at, &names);
        self.notes(sheet, at, notes.iter().filter(|note| note.panel == place));
    }
    /// The curves of a panel, those of the base under those of the step, and their names.
    fn curves(&self, panel: &mut Panel, shown: &Shown) -> Vec<EndName> {
        let lesson = self.taught.lesson;
        let mut names = Vec::new();
        for (rank, trace) in shown.traces.iter().enumerate() {
            let colour = hues::colour(*trace);
            let mut add = |step: usize, pen: Pen, name: &str| {
                let points = self.points(step, *trace);
                let end = super::series::last(&points);
                let is_data = step == self.step;
                let value = match is_data {
                    true => number(end, trace.digits()),
                    false => String::new(),
                };
                panel.lines.push(Line::new(name, points, pen));
                names.push(EndName {
                    is_data,
                    ..EndName::curve(name, value, end, pen)
                });
            };
            if !self.is_base() {
                add(
                    lesson.base,
                    hues::base(colour),
                    lesson.steps[lesson.base].label,
                );
            }
            add(self.step, hues::pen(colour, rank), trace.name());
        }
        names
    }
    fn points(&self, step: usize, trace: crate::analysis::lesson::trace::Trace) -> Vec<Point> {
        let traces = self.taught.lesson.traces();
        let course = &self.taught.courses[step];
        let at = traces.iter().position(|&t| t == trace);
        let values = at.map_or(&[][..], |at| &course.values[at]);
        let minutes = course.minutes.iter().map(|&minute| days(minute));
        minutes.zip(values.iter().copied()).collect()
    }
    /// The lines of reference of a panel, and their names.
    fn levels(&self, panel: &mut Panel, shown: &Shown) -> Vec<EndName> {
        let across = (panel.across.low, panel.across.high);
        let mut names = Vec::new();
        for line in shown.lines {
            let value = (line.value)(&self.taught.steps[self.step]);
            let pen = hues::level(line.of);
            panel.limits.push(Limit::new(line.name, value, across, pen));
            let words = trimmed((100.0 * value).round() / 100.0);
            names.push(EndName::limit(line.name, words, value, pen));
        }
        names
    }
    fn notes<'n>(&self, sheet: &mut Sheet, panel: usize, notes: impl Iterator<Item = &'n Placed>) {
        let notes: Vec<&Placed> = notes.collect();
        let at = |note: &Placed| (days(note.minute), note.value);
        for note in &notes {
            sheet.mark(panel, at(note), Form::Disc, hues::colour(note.trace));
        }
        for note in notes {
            arrow::words_to(sheet, panel, at(note), &note.words, note.is_of_base);
        }
    }
}

/// The axis of a panel over some steps of a lesson.
pub fn axis(taught: &Taught<'_>, place: usize, steps: &[usize]) -> Axis {
    let (traces, shown) = (taught.lesson.traces(), &taught.lesson.panels[place]);
    let of_step = |&step: &usize| {
        let course = &taught.courses[step];
        let values = traces.iter().zip(&course.values);
        let drawn = values.filter(|(trace, _)| shown.traces.contains(trace));
        let lines = shown.lines.iter();
        let levels = lines.map(move |line| (line.value)(&taught.steps[step]));
        drawn
            .flat_map(|(_, values)| values.iter().copied())
            .chain(levels)
    };
    let values: Vec<f64> = steps.iter().flat_map(of_step).collect();
    let least = shown.least;
    // shares of 100 end at 100
    if shown.traces[0].unit() == "of 100" {
        return super::axis::around(0.0, 100.0, 5);
    }
    if shown.from_zero {
        return from_zero(values, least, 5);
    }
    let low = values.iter().copied().fold(f64::INFINITY, f64::min);
    let high = values.iter().copied().fold(least, f64::max);
    about(low, high, 5)
}
