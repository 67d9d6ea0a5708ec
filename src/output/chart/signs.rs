//! Small signs drawn in pixels of the page.

use super::figure::Shape;
use super::rect::{Point, Rect};
use super::style::{CHANGE, Colour, INK, Pen};

/// A blue triangle that points down to a place: a water change.
pub fn change_mark((x, y): Point) -> Shape {
    let corners = vec![(x - 5.0, y - 8.5), (x + 5.0, y - 8.5), (x, y - 0.5)];
    Shape::Fill(corners, CHANGE, 1.0)
}

/// The same where a panel is small and days are narrow.
pub fn small_change_mark((x, y): Point) -> Shape {
    let corners = vec![(x - 3.0, y - 6.5), (x + 3.0, y - 6.5), (x, y - 1.0)];
    Shape::Fill(corners, CHANGE, 1.0)
}

/// An ink diamond about a place: another step of the plan.
pub fn step_mark((x, y): Point) -> Shape {
    let corners = vec![(x - 5.0, y), (x, y - 5.0), (x + 5.0, y), (x, y + 5.0)];
    Shape::Fill(corners, INK, 1.0)
}

/// A cell of a strip: filled when something holds, only outlined when not.
pub fn cell(space: &Rect, colour: Colour, filled: bool) -> Vec<Shape> {
    if filled {
        return vec![Shape::Fill(corners(space), colour, 0.75)];
    }
    let inner = space.grown(-0.5);
    let mut outline = corners(&inner);
    outline.push(outline[0]);
    vec![Shape::Path(outline, Pen::hair(colour))]
}

/// The corners of a rectangle.
pub fn corners(space: &Rect) -> Vec<Point> {
    vec![
        (space.left, space.top),
        (space.right, space.top),
        (space.right, space.bottom),
        (space.left, space.bottom),
    ]
}
