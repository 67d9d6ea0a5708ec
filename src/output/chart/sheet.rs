//! A figure under way: titles, keys, panels with their ticks, and words beside marks.

use super::axis::Axis;
use super::figure::{Anchor, Figure, Form, Label, Mark, PAGE, Panel, Shape, Span, width_of};
use super::fonts::{ASCENT, DESCENT, Face};
use super::labels::Taken;
use super::rect::{Point, Rect};
use super::style::{Colour, INK, MUTED, NAME, Pen, SENTENCE, TICK, TITLE};
use super::words::formulas;

/// Left edge of data and of titles.
pub const LEFT: f64 = 64.0;
/// Right edge of data.
pub const RIGHT: f64 = 1030.0;
/// Right edge of the page that titles may reach.
pub const MARGIN: f64 = 1180.0;
/// What it costs words to lie on a grid line, in pixels of distance.
const GRID_COST: f64 = 3.0;
/// What it costs words to cross a dark line, as pixels of distance: they rather stand beyond it.
const INK_COST: f64 = 240.0;
/// Where words may stand on the page.
const PAPER: Rect = Rect::new(8.0, 8.0, PAGE.0 - 8.0, PAGE.1 - 8.0);

/// Regular words of the common size.
pub fn plain(text: &str, colour: Colour) -> Span {
    Span::new(text, Face::Regular, NAME, colour)
}
/// Semi-bold words of the common size.
pub fn bold(text: &str, colour: Colour) -> Span {
    Span::new(text, Face::SemiBold, NAME, colour)
}
/// Regular words of the smallest size.
pub fn small(text: &str, colour: Colour) -> Span {
    Span::new(text, Face::Regular, TICK, colour)
}

/// A figure under way.
#[derive(Debug)]
pub struct Sheet {
    /// What stands so far.
    pub figure: Figure,
}

impl Sheet {
    /// A page with the first title and the longest sentence that fit on one line each.
    pub fn new(name: &str, titles: &[String], sentences: &[String]) -> Sheet {
        let room = MARGIN - LEFT;
        let title = formulas(&fitting(titles, Face::SemiBold, TITLE, room));
        let sentence = formulas(&fitting(sentences, Face::Regular, SENTENCE, room));
        let mut sheet = Sheet {
            figure: Figure {
                name: name.to_string(),
                title: title.clone(),
                sentence: sentence.clone(),
                panels: Vec::new(),
                shapes: Vec::new(),
                labels: Vec::new(),
                left_out: Vec::new(),
            },
        };
        let title = Span::new(&title, Face::SemiBold, TITLE, INK);
        let sentence = Span::new(&sentence, Face::Regular, SENTENCE, MUTED);
        sheet.say(vec![title], Anchor::Start, LEFT, 44.0);
        sheet.say(vec![sentence], Anchor::Start, LEFT, 69.0);
        sheet
    }
    /// Puts words on the page.
    pub fn say(&mut self, spans: Vec<Span>, anchor: Anchor, x: f64, baseline: f64) {
        let label = Label::new(spans, anchor, x, baseline);
        self.figure.labels.push(label);
    }
    /// Puts words on the page where no others are; false when there are, and nothing is written.
    pub fn say_clear(&mut self, spans: Vec<Span>, anchor: Anchor, x: f64, baseline: f64) -> bool {
        let label = Label::new(spans, anchor, x, baseline);
        let wide = label.space.grown(2.0);
        let free = PAPER.holds(&label.space)
            && !self.figure.labels.iter().any(|l| l.space.overlaps(&wide));
        if free {
            self.figure.labels.push(label);
        }
        free
    }
    /// Puts words about a place of a panel if no curve and no other words are there.
    pub fn say_if_free(&mut self, panel: usize, spans: Vec<Span>, x: f64, baseline: f64) -> bool {
        let space = Label::new(spans.clone(), Anchor::Middle, x, baseline).space;
        let free = self.taken(panel).is_free(&space);
        free && self.say_clear(spans, Anchor::Middle, x, baseline)
    }
    /// Draws in pixels of the page.
    pub fn shape(&mut self, shape: Shape) {
        self.figure.shapes.push(shape);
    }
    /// Adds a panel with its title `above` its frame, and the names of its ticks on the left.
    pub fn panel(&mut self, mut panel: Panel, title: &str, unit: &str, above: f64) -> usize {
        let mut spans = vec![Span::new(title, Face::SemiBold, SENTENCE, INK)];
        panel.title = title.to_string();
        if !unit.is_empty() {
            spans.push(plain(unit, MUTED));
            panel.title += &format!(", {unit}");
        }
        let baseline = panel.frame.top - above;
        self.say(spans, Anchor::Start, LEFT, baseline);
        for tick in &panel.up.ticks {
            let y = panel.y(tick.value);
            if tick.words.is_empty() {
                let ends = vec![(panel.frame.left - 4.0, y), (panel.frame.left, y)];
                self.shape(Shape::Path(ends, Pen::hair(super::style::BASE)));
            } else {
                let words = vec![small(&tick.words, MUTED)];
                self.say(words, Anchor::End, panel.frame.left - 9.0, y + 4.5);
            }
        }
        self.figure.panels.push(panel);
        self.figure.panels.len() - 1
    }
    /// A mark in a panel.
    pub fn mark(&mut self, panel: usize, at: Point, form: Form, colour: Colour) {
        let mark = Mark { at, form, colour };
        self.figure.panels[panel].marks.push(mark);
    }
    /// Words about a point of a panel, in the emptiest place; with a fine line to the point where
    /// they stand apart from it. Without room they are noted as left out.
    pub fn words_at(&mut self, panel: usize, at: Point, spans: Vec<Span>) {
        let mark = self.figure.panels[panel].at(at);
        let taken = self.taken(panel);
        let height = spans.iter().map(|s| s.size).fold(0.0, f64::max);
        let size = (width_of(&spans), (ASCENT + DESCENT) * height);
        let room = self.figure.panels[panel].frame.grown(-4.0);
        let Some(space) = taken.beside(mark, size, &room) else {
            self.leave_out(&spans);
            return;
        };
        let near = space.nearest(mark);
        let gap = (near.0 - mark.0).abs().max((near.1 - mark.1).abs());
        let this = &self.figure.panels[panel];
        let hangs_on_a_line = this.uprights.iter().any(|u| {
            let x = this.x(u.at);
            (x - mark.0).abs() < 1.0 && (x - near.0).abs() < 24.0
        });
        if gap > 24.0 && !hangs_on_a_line {
            let pen = Pen::hair(INK);
            let leader = vec![off(near, mark, 3.0), off(mark, near, 7.0)];
            self.shape(Shape::Path(leader, pen));
        }
        self.say(
            spans,
            Anchor::Start,
            space.left,
            space.top + ASCENT * height,
        );
    }
    /// Words before a point of a panel and a little above it, where they read as its name; elsewhere about it
    /// when that place is taken.
    pub fn words_before(&mut self, panel: usize, at: Point, spans: Vec<Span>) {
        let this = &self.figure.panels[panel];
        let (x, y) = this.at(at);
        let label = Label::new(spans.clone(), Anchor::End, x - 10.0, y - 8.0);
        let inside = this.frame.grown(-4.0).holds(&label.space);
        if inside && self.taken(panel).is_free(&label.space) {
            self.figure.labels.push(label);
        } else {
            self.words_at(panel, at, spans);
        }
    }
    /// Notes words that found no place.
    pub fn leave_out(&mut self, spans: &[Span]) {
        let words: Vec<&str> = spans.iter().map(|s| s.text.as_str()).collect();
        self.figure.left_out.push(words.join(" "));
    }
    /// What words in a panel have to keep off.
    pub fn taken(&self, panel: usize) -> Taken {
        let this = &self.figure.panels[panel];
        let mut boxes: Vec<Rect> = self.figure.labels.iter().map(|l| l.space).collect();
        boxes.extend(this.marks.iter().map(|m| {
            let (x, y) = this.at(m.at);
            Rect::new(x - 5.0, y - 5.0, x + 5.0, y + 5.0)
        }));
        let upright = |x: f64| [(x, this.frame.top), (x, this.frame.bottom)];
        let level = |y: f64| [(this.frame.left, y), (this.frame.right, y)];
        let across = this.across.ticks.iter().filter(|t| !t.words.is_empty());
        let up = this.up.ticks.iter().filter(|t| !t.words.is_empty());
        let weight = |pen: Pen| if pen.colour == INK { INK_COST } else { 4.0 };
        let fine = this
            .uprights
            .iter()
            .map(|u| (upright(this.x(u.at)), weight(u.pen)))
            .chain(across.map(|t| (upright(this.x(t.value)), GRID_COST)))
            .chain(up.map(|t| (level(this.y(t.value)), GRID_COST)));
        Taken {
            boxes,
            curves: this.curves(),
            fine: fine.collect(),
        }
    }
    /// Short lines and names under a panel, for an axis whose names have one row.
    pub fn ticks_below(&mut self, panel: usize, axis: &Axis) {
        let bottom = self.figure.panels[panel].frame.bottom;
        for tick in &axis.ticks {
            let x = self.figure.panels[panel].x(tick.value).floor() + 0.5;
            let long = if tick.words.is_empty() { 4.0 } else { 7.0 };
            let ends = vec![(x, bottom), (x, bottom + long)];
            self.shape(Shape::Path(ends, Pen::hair(super::style::BASE)));
            if !tick.words.is_empty() {
                let words = vec![small(&tick.words, MUTED)];
                self.say(words, Anchor::Middle, x, bottom + 22.0);
            }
        }
    }
}

/// The first text that fits, or the last one cut with an ellipsis.
pub fn fitting(texts: &[String], face: Face, size: f64, room: f64) -> String {
    let fits = |text: &str| face.width(&face.drawable(text), size) <= room;
    if let Some(text) = texts.iter().find(|text| fits(text)) {
        return text.clone();
    }
    let mut text = texts.last().cloned().unwrap_or_default();
    while !text.is_empty() && !fits(&format!("{text}…")) {
        text.pop();
    }
    format!("{}…", text.trim_end())
}

/// The point `by` pixels from `from` towards `to`.
fn off(from: Point, to: Point, by: f64) -> Point {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length = (dx * dx + dy * dy).sqrt().max(by);
    (from.0 + dx * by / length, from.1 + dy * by / length)
}
