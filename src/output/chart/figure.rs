//! A chart as a plain value: what is where, before anything is drawn. Tests assert on it.

use super::rect::Point;
use super::series::last;
use super::style::{Colour, Pen};
use super::words::short;

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
    /// Words that found no free place and are not on the page.
    pub left_out: Vec<String>,
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

impl Figure {
    /// The figure in words, for those who hear it: the sentence, then what each panel holds.
    pub fn description(&self) -> String {
        let mut words = self.sentence.clone();
        for panel in &self.panels {
            words += &format!("\n{}", panel.title);
            let curves = curves_of(panel);
            if !curves.is_empty() {
                words += &format!(": {}", curves.join("; "));
            }
            words.push('.');
        }
        words
    }
}

/// Each curve of a panel with its range and its end; curves in pieces count once.
fn curves_of(panel: &Panel) -> Vec<String> {
    let mut names: Vec<&str> = panel.lines.iter().map(|l| l.name.as_str()).collect();
    names.dedup();
    let mut told = Vec::new();
    for name in names {
        let pieces = panel.lines.iter().filter(|l| l.name == name);
        let heights: Vec<f64> = pieces.flat_map(|l| &l.points).map(|p| p.1).collect();
        let low = heights.iter().copied().fold(f64::INFINITY, f64::min);
        let high = heights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        if let Some(&end) = heights.last() {
            told.push(format!(
                "{name} between {} and {}, {} at the end",
                short(low),
                short(high),
                short(end)
            ));
        }
    }
    told.extend(panel.areas.iter().map(|area| {
        let thick = last(&area.upper) - last(&area.lower);
        format!("{} {} at the end", area.name, short(thick))
    }));
    told
}
