//! A panel of a chart: a frame on the page with two axes, and data in the units of the axes.

use super::axis::Axis;
use super::rect::{Point, Rect};
use super::style::{Colour, Pen};

/// One panel: a frame on the page with two axes, and data in the units of the axes.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// What it shows, with its unit.
    pub title: String,
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

impl Panel {
    /// An empty panel.
    pub fn new(frame: Rect, across: Axis, up: Axis) -> Panel {
        Panel {
            title: String::new(),
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
        // a band without a line along it is pale enough to write on
        let areas = self.areas.iter().filter(|a| a.edge.is_some());
        let areas = areas.flat_map(|a| [&a.upper, &a.lower]);
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
