//! Rectangles on the page, and whether things run into them.

/// A point on the page, pixels from the top left corner.
pub type Point = (f64, f64);

/// A rectangle on the page, pixels; `top` is the smaller number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Lower edge.
    pub bottom: f64,
}

impl Rect {
    /// The rectangle between four edges.
    pub const fn new(left: f64, top: f64, right: f64, bottom: f64) -> Rect {
        Rect {
            left,
            top,
            right,
            bottom,
        }
    }
    /// Width, pixels.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }
    /// Height, pixels.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }
    /// The same rectangle, wider by `by` on every side.
    pub fn grown(&self, by: f64) -> Rect {
        Rect::new(
            self.left - by,
            self.top - by,
            self.right + by,
            self.bottom + by,
        )
    }
    /// The same rectangle elsewhere.
    pub fn moved(&self, right: f64, down: f64) -> Rect {
        Rect::new(
            self.left + right,
            self.top + down,
            self.right + right,
            self.bottom + down,
        )
    }
    /// Whether two rectangles share any area.
    pub fn overlaps(&self, other: &Rect) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }
    /// Whether the other rectangle lies inside this one.
    pub fn holds(&self, other: &Rect) -> bool {
        self.left <= other.left
            && other.right <= self.right
            && self.top <= other.top
            && other.bottom <= self.bottom
    }
    /// The point of the rectangle nearest to another point.
    pub fn nearest(&self, (x, y): Point) -> Point {
        (
            x.clamp(self.left, self.right),
            y.clamp(self.top, self.bottom),
        )
    }
    /// Whether the straight piece from `a` to `b` runs through the rectangle (Liang and Barsky's
    /// clipping of a segment by four edges).
    pub fn is_crossed_by(&self, a: Point, b: Point) -> bool {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let edges = [
            (-dx, a.0 - self.left),
            (dx, self.right - a.0),
            (-dy, a.1 - self.top),
            (dy, self.bottom - a.1),
        ];
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (towards, room) in edges {
            if towards == 0.0 {
                if room <= 0.0 {
                    return false;
                }
            } else if towards < 0.0 {
                enters = enters.max(room / towards);
            } else {
                leaves = leaves.min(room / towards);
            }
        }
        enters < leaves
    }
    /// Whether a path of straight pieces runs through the rectangle.
    pub fn is_on(&self, path: &[Point]) -> bool {
        path.windows(2).any(|w| self.is_crossed_by(w[0], w[1]))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_segment_is_found_whether_it_ends_inside_or_runs_through() {
        let rect = Rect::new(10.0, 10.0, 20.0, 20.0);
        assert!(rect.is_crossed_by((0.0, 15.0), (30.0, 15.0)));
        assert!(rect.is_crossed_by((15.0, 15.0), (40.0, 40.0)));
        assert!(!rect.is_crossed_by((5.0, 12.0), (12.0, 5.0)));
        assert!(!rect.is_crossed_by((0.0, 25.0), (30.0, 25.0)));
        assert!(!rect.is_crossed_by((0.0, 0.0), (5.0, 5.0)));
    }

    #[test]
    fn rectangles_that_only_touch_do_not_overlap() {
        let rect = Rect::new(0.0, 0.0, 10.0, 10.0);
        assert!(!rect.overlaps(&rect.moved(10.0, 0.0)));
        assert!(rect.overlaps(&rect.moved(9.9, 0.0)));
    }
}
