//! Curves on a scale of decades, where zero has no place.

use super::axis::Axis;
use super::figure::Line;
use super::rect::Point;
use super::style::Pen;

/// The pieces of a curve that lie on the axis; a piece that comes from below starts on the floor.
pub fn drawable(name: &str, points: &[Point], up: &Axis, pen: Pen) -> Vec<Line> {
    let mut pieces: Vec<Vec<Point>> = vec![Vec::new()];
    for (n, &point) in points.iter().enumerate() {
        if !up.holds(point.1) {
            continue;
        }
        let before = n.checked_sub(1).map(|n| points[n]);
        if let Some(under) = before.filter(|p| !up.holds(p.1)) {
            pieces.push(vec![floor_between(under, point, up)]);
        }
        if let Some(piece) = pieces.last_mut() {
            piece.push(point);
        }
        let after = points.get(n + 1).filter(|p| !up.holds(p.1));
        if let (Some(&under), Some(piece)) = (after, pieces.last_mut()) {
            piece.push(floor_between(under, point, up));
        }
    }
    pieces
        .into_iter()
        .filter(|piece| piece.len() > 1)
        .map(|piece| Line::new(name, piece, pen))
        .collect()
}

/// Where the straight line (on the scale of decades) between a point under the floor and one on
/// the axis meets the floor. Zero has no place on that scale and counts as a tenth of the floor.
fn floor_between(under: Point, over: Point, up: &Axis) -> Point {
    let low = up.place(under.1.max(0.1 * up.low));
    let share = -low / (up.place(over.1) - low);
    (under.0 + share * (over.0 - under.0), up.low)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::output::chart::axis::decades;
    use crate::output::chart::style::INK;

    #[test]
    fn a_curve_from_below_starts_on_the_floor() {
        let up = decades([1.0, 100.0], 4);
        let curve = [(0.0, 0.0), (1.0, 10.0), (2.0, 100.0)];
        let lines = drawable("capacity", &curve, &up, Pen::curve(INK));
        // zero counts as 0.1: half way, on the scale of decades, from there to 10 is 1
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].points[0].1, up.low);
        assert!((lines[0].points[0].0 - 0.5).abs() < 1e-12);
    }
}
