//! A chart as a plain value: what is where, before anything is drawn. Tests assert on it.

use super::rect::Point;
use super::style::{Colour, Pen};

pub use super::label::{Anchor, Label, Span, width_of};
pub use super::panel::{Area, Bar, Field, Form, Limit, Line, Mark, Panel, Upright};

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
