//! A chart on which no words overlap, no panel covers another and nothing is off the page or outside its panel.
//! Tests take of it what they need.
#![allow(dead_code)]

use firstfill::output::chart::Figure;
use firstfill::output::chart::figure::{Label, Shape};
use firstfill::output::chart::rect::Rect;
use firstfill::output::chart::style::LEAST;

/// Asserts it; titles and sentences must not be cut either.
pub fn apart(figure: &Figure) {
    words_apart(&figure.name, figure);
    let page = Rect::new(0.0, 0.0, 1200.0, 900.0);
    for (n, panel) in figure.panels.iter().enumerate() {
        assert!(page.holds(&panel.frame), "{} is off the page", panel.title);
        for (x, y) in panel.values() {
            let inside = panel.across.holds(x) && panel.up.holds(y);
            assert!(inside, "{}: {x}, {y}", panel.title);
        }
        for other in &figure.panels[..n] {
            let clear = !panel.frame.overlaps(&other.frame);
            assert!(clear, "{} on {}", panel.title, other.title);
        }
    }
    for shape in &figure.shapes {
        let points = match shape {
            Shape::Path(points, _) | Shape::Fill(points, ..) => points.clone(),
            Shape::Disc(centre, ..) => vec![*centre],
        };
        let is_on = |(x, y): (f64, f64)| page.holds(&Rect::new(x, y, x, y));
        assert!(points.into_iter().all(is_on), "{}: {shape:?}", figure.name);
    }
}

/// No word lies on another or off the page or is too small to be read, and neither title nor sentence is cut.
pub fn words_apart(name: &str, figure: &Figure) {
    let page = Rect::new(4.0, 4.0, 1196.0, 896.0);
    for (n, label) in figure.labels.iter().enumerate() {
        let (words, space) = (label.words(), &label.space);
        let over = |other: &Label| space.overlaps(&other.space).then(|| other.words());
        let others = figure.labels[n + 1..].iter().find_map(over);
        assert_eq!(others, None, "{name}: “{words}” lies on it");
        assert!(page.holds(space), "{name}: “{words}” {space:?}");
        let small = label.spans.iter().any(|span| span.size < LEAST);
        assert!(!small, "{name}: “{words}” is too small");
    }
    let cut = figure.title.ends_with('…') || figure.sentence.ends_with('…');
    assert!(!cut, "{name}: {} / {}", figure.title, figure.sentence);
}

/// No words are left out for want of room, and every letter has its glyph; of names of the user's both may fail.
pub fn all_words_are_drawn(name: &str, figure: &Figure) {
    assert!(figure.left_out.is_empty(), "{name}: {:?}", figure.left_out);
    for span in figure.labels.iter().flat_map(|label| &label.spans) {
        let draws = |letter: char| letter != '?' && span.face.draws(letter);
        let drawn = span.text.chars().all(draws);
        assert!(drawn, "{name}: “{}” has no glyph", span.text);
    }
}

/// The box about everything of a shape that is drawn, as wide as its pen.
pub fn space(shape: &Shape) -> Rect {
    let (points, by) = match shape {
        Shape::Path(points, pen) => (points.clone(), pen.width / 2.0),
        Shape::Fill(points, ..) => (points.clone(), 0.0),
        Shape::Disc(centre, radius, _) => (vec![*centre], *radius),
    };
    let end = |of: fn(f64, f64) -> f64, at: fn(&(f64, f64)) -> f64, start: f64| {
        points.iter().map(at).fold(start, of)
    };
    let (least, most) = (f64::INFINITY, f64::NEG_INFINITY);
    let left = end(f64::min, |p| p.0, least);
    let top = end(f64::min, |p| p.1, least);
    let right = end(f64::max, |p| p.0, most);
    Rect::new(left, top, right, end(f64::max, |p| p.1, most)).grown(by)
}
