//! A chart as a plain value: what is where, before anything is drawn. Tests assert on it.

use super::axis::Axis;
use super::fonts::{ASCENT, DESCENT, Face};
use super::rect::{Point, Rect};
use super::style::{Colour, Pen};

/// Width and height of every page, pixels.
pub const PAGE: (f64, f64) = (1200.0, 900.0);

/// One chart.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// Stem of its files, for example `weeks` or `day-08`.
    pub name: String,
    /// The result in words.
    pub title: String,
    /// What the picture alone would hide.
    pub sentence: String,
    /// The panels, top to bottom.
    pub panels: Vec<Panel>,
    /// What lies on the page outside the panels' scales: leaders, samples, marks on frames.
    pub shapes: Vec<Shape>,
    /// Every text, with its measured box.
    pub labels: Vec<Label>,
}

/// One panel: a frame on the page with two axes, and data in the units of the axes.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// Place on the page.
    pub frame: Rect,
    /// The axis from left to right.
    pub across: Axis,
    /// The axis from bottom to top.
    pub up: Axis,
    /// Shaded parts, drawn first.
    pub fields: Vec<Field>,
    /// Filled areas between two curves.
    pub areas: Vec<Area>,
    /// Upright lines through the panel.
    pub uprights: Vec<Upright>,
    /// Limits and lines of reference.
    pub limits: Vec<Limit>,
    /// Upright bars from a lowest to a highest value.
    pub bars: Vec<Bar>,
    /// Curves.
    pub lines: Vec<Line>,
    /// Single values.
    pub marks: Vec<Mark>,
}

/// A shaded rectangle, in the units of the axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Field {
    /// From and to along the panel.
    pub across: (f64, f64),
    /// From and to in height.
    pub up: (f64, f64),
    /// Fill.
    pub colour: Colour,
    /// How much it covers, 0 to 1.
    pub alpha: f64,
}

/// The area between two curves over the same places.
#[derive(Debug, Clone, PartialEq)]
pub struct Area {
    /// Name of what it shows.
    pub name: String,
    /// Upper curve.
    pub upper: Vec<Point>,
    /// Lower curve.
    pub lower: Vec<Point>,
    /// Fill.
    pub colour: Colour,
    /// How much it covers, 0 to 1.
    pub alpha: f64,
    /// Line along the upper curve.
    pub edge: Option<Pen>,
}

/// An upright line through a panel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Upright {
    /// Place along the panel.
    pub at: f64,
    /// How it is drawn.
    pub pen: Pen,
}

/// A level line.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// Name of the limit.
    pub name: String,
    /// Its value.
    pub value: f64,
    /// From and to along the panel.
    pub across: (f64, f64),
    /// How it is drawn.
    pub pen: Pen,
}

/// An upright bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// Place along the panel.
    pub at: f64,
    /// Lowest value.
    pub low: f64,
    /// Highest value.
    pub high: f64,
    /// Its colour.
    pub colour: Colour,
    /// Its width, pixels.
    pub width: f64,
}

/// A curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Name of what it shows.
    pub name: String,
    /// Its points, from left to right.
    pub points: Vec<Point>,
    /// How it is drawn.
    pub pen: Pen,
}

/// A single value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mark {
    /// Its place in the units of the axes.
    pub at: Point,
    /// Its form.
    pub form: Form,
    /// Its colour.
    pub colour: Colour,
}

/// Form of a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// A disc with a white ring: a value that is talked about.
    Disc,
    /// A plain small dot.
    Dot,
    /// A small triangle pointing up.
    Peak,
}

/// Something drawn in pixels of the page.
#[derive(Debug, Clone, PartialEq)]
pub enum Shape {
    /// A line through points.
    Path(Vec<Point>, Pen),
    /// A filled polygon: corners, colour, cover.
    Fill(Vec<Point>, Colour, f64),
    /// A disc: centre, radius, colour.
    Disc(Point, f64, Colour),
}

/// A piece of text in one face.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// The words.
    pub text: String,
    /// The face.
    pub face: Face,
    /// Size, pixels.
    pub size: f64,
    /// Colour.
    pub colour: Colour,
}

impl Span {
    /// Text in a face; characters without a glyph become question marks.
    pub fn new(text: &str, face: Face, size: f64, colour: Colour) -> Span {
        Span {
            text: face.drawable(text),
            face,
            size,
            colour,
        }
    }
    /// Width, pixels.
    pub fn width(&self) -> f64 {
        self.face.width(&self.text, self.size)
    }
}

/// Which part of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// A text on the page: one line, of one or more spans side by side.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Its pieces, left to right.
    pub spans: Vec<Span>,
    /// Left end, pixels.
    pub left: f64,
    /// Base line, pixels.
    pub baseline: f64,
    /// The measured box.
    pub space: Rect,
}

/// Room between two spans, pixels.
const BETWEEN: f64 = 7.0;

impl Label {
    /// A text with a place on the page.
    pub fn new(spans: Vec<Span>, anchor: Anchor, x: f64, baseline: f64) -> Label {
        let width = width_of(&spans);
        let left = match anchor {
            Anchor::Start => x,
            Anchor::Middle => x - width / 2.0,
            Anchor::End => x - width,
        };
        let size = spans.iter().map(|s| s.size).fold(0.0, f64::max);
        let space = Rect::new(
            left,
            baseline - ASCENT * size,
            left + width,
            baseline + DESCENT * size,
        );
        Label {
            spans,
            left,
            baseline,
            space,
        }
    }
    /// Each piece with the left end it is drawn from.
    pub fn placed(&self) -> impl Iterator<Item = (f64, &Span)> {
        self.spans.iter().scan(self.left, |x, span| {
            let left = *x;
            *x += span.width() + BETWEEN;
            Some((left, span))
        })
    }
    /// All words of the label.
    pub fn words(&self) -> String {
        let words: Vec<&str> = self.spans.iter().map(|s| s.text.as_str()).collect();
        words.join(" ")
    }
}

impl Line {
    /// A curve with a name.
    pub fn new(name: &str, points: Vec<Point>, pen: Pen) -> Line {
        Line {
            name: name.to_string(),
            points,
            pen,
        }
    }
}

impl Limit {
    /// A level line with a name.
    pub fn new(name: &str, value: f64, across: (f64, f64), pen: Pen) -> Limit {
        Limit {
            name: name.to_string(),
            value,
            across,
            pen,
        }
    }
}

/// Width of spans side by side, pixels.
pub fn width_of(spans: &[Span]) -> f64 {
    let text: f64 = spans.iter().map(Span::width).sum();
    text + BETWEEN * spans.len().saturating_sub(1) as f64
}

impl Panel {
    /// An empty panel.
    pub fn new(frame: Rect, across: Axis, up: Axis) -> Panel {
        Panel {
            frame,
            across,
            up,
            fields: Vec::new(),
            areas: Vec::new(),
            uprights: Vec::new(),
            limits: Vec::new(),
            bars: Vec::new(),
            lines: Vec::new(),
            marks: Vec::new(),
        }
    }
    /// Place on the page of a value along the panel.
    pub fn x(&self, value: f64) -> f64 {
        self.frame.left + self.across.place(value) * self.frame.width()
    }
    /// Place on the page of a height.
    pub fn y(&self, value: f64) -> f64 {
        self.frame.bottom - self.up.place(value) * self.frame.height()
    }
    /// Place on the page of a point.
    pub fn at(&self, (x, y): Point) -> Point {
        (self.x(x), self.y(y))
    }
    /// A path on the page.
    pub fn path(&self, points: &[Point]) -> Vec<Point> {
        points.iter().map(|&p| self.at(p)).collect()
    }
    /// Everything in the panel a word must not lie on, as paths on the page.
    pub fn curves(&self) -> Vec<Vec<Point>> {
        let lines = self.lines.iter().map(|l| self.path(&l.points));
        let areas = self.areas.iter().flat_map(|a| [&a.upper, &a.lower]);
        let levels = self
            .limits
            .iter()
            .map(|l| vec![(l.across.0, l.value), (l.across.1, l.value)]);
        let bars = self
            .bars
            .iter()
            .map(|b| vec![(b.at, b.low), (b.at, b.high)]);
        lines
            .chain(areas.map(|curve| self.path(curve)))
            .chain(levels.chain(bars).map(|p| self.path(&p)))
            .collect()
    }
    /// Every value drawn, as points in the units of the axes.
    pub fn values(&self) -> Vec<Point> {
        let mut all: Vec<Point> = self.lines.iter().flat_map(|l| l.points.clone()).collect();
        all.extend(
            self.areas
                .iter()
                .flat_map(|a| a.upper.iter().chain(&a.lower)),
        );
        all.extend(self.marks.iter().map(|m| m.at));
        all.extend(
            self.bars
                .iter()
                .flat_map(|b| [(b.at, b.low), (b.at, b.high)]),
        );
        all.extend(
            self.limits
                .iter()
                .flat_map(|l| [(l.across.0, l.value), (l.across.1, l.value)]),
        );
        all.extend(
            self.fields
                .iter()
                .flat_map(|f| [(f.across.0, f.up.0), (f.across.1, f.up.1)]),
        );
        all.extend(self.uprights.iter().map(|u| (u.at, self.up.low)));
        all
    }
}
