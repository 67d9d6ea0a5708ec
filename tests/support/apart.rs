//! A chart on which no words overlap, no panel covers another and nothing is off the page or outside its panel.

use firstfill::output::chart::Figure;
use firstfill::output::chart::figure::Shape;
use firstfill::output::chart::rect::Rect;

/// Asserts it; titles and sentences must not be cut either.
pub fn apart(figure: &Figure) {
    let page = Rect::new(0.0, 0.0, 1200.0, 900.0);
    for (n, label) in figure.labels.iter().enumerate() {
        let words = label.words();
        assert!(
            page.holds(&label.space),
            "{}: {words} is off the page",
            figure.name
        );
        for other in &figure.labels[..n] {
            let other_words = other.words();
            assert!(
                !label.space.overlaps(&other.space),
                "{}: {words} on {other_words}",
                figure.name
            );
        }
    }
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
    assert!(!figure.title.ends_with('…'), "{} is cut", figure.title);
    assert!(
        !figure.sentence.ends_with('…'),
        "{} is cut",
        figure.sentence
    );
}
