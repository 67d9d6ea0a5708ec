//! Words on the page, each with its measured box.

use super::fonts::{ASCENT, DESCENT, Face};
use super::rect::Rect;
use super::style::Colour;
use super::words::formulas;

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
    /// Text in a face, formulas with their numbers below the line; characters without a glyph become question
    /// marks.
    pub fn new(text: &str, face: Face, size: f64, colour: Colour) -> Span {
        Span {
            text: face.drawable(&formulas(text)),
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

/// Width of spans side by side, pixels.
pub fn width_of(spans: &[Span]) -> f64 {
    let text: f64 = spans.iter().map(Span::width).sum();
    text + BETWEEN * spans.len().saturating_sub(1) as f64
}
