//! Curves without the points nobody could see: those on the straight line between others.

use super::rect::Point;

/// How far a thinned curve may pass beside a point that was left out, pixels: the step in which
/// places are written.
pub const UNSEEN: f64 = 0.1;

/// The curve with as few of its points as it takes to pass all others within [`UNSEEN`] (Douglas
/// and Peucker's way: the farthest point from the chord is kept, and both halves are done alike).
pub fn thinned(curve: &[Point]) -> Vec<Point> {
    let mut kept = vec![false; curve.len()];
    let mut open = Vec::new();
    if let Some(last) = curve.len().checked_sub(1) {
        (kept[0], kept[last]) = (true, true);
        open.push((0, last));
    }
    while let Some((from, until)) = open.pop() {
        if let Some(at) = farthest(curve, from, until) {
            kept[at] = true;
            open.extend([(from, at), (at, until)]);
        }
    }
    let both = curve.iter().zip(kept);
    both.filter_map(|(point, kept)| kept.then_some(*point))
        .collect()
}

/// The point between two of a curve that is farthest from their chord, if it is too far.
fn farthest(curve: &[Point], from: usize, until: usize) -> Option<usize> {
    let mut worst = (UNSEEN, None);
    for at in from + 1..until {
        let far = distance(curve[at], curve[from], curve[until]);
        if far > worst.0 {
            worst = (far, Some(at));
        }
    }
    worst.1
}

/// Distance of a point from the straight piece between two others.
fn distance((x, y): Point, a: Point, b: Point) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let length = dx * dx + dy * dy;
    let along = if length > 0.0 {
        (((x - a.0) * dx + (y - a.1) * dy) / length).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let (off_x, off_y) = (x - a.0 - along * dx, y - a.1 - along * dy);
    (off_x * off_x + off_y * off_y).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_thinned_curve_passes_every_point_unseen(
            heights in prop::collection::vec(0.0..3.0_f64, 2..200)
        ) {
            let curve: Vec<Point> = heights.iter().enumerate().map(|(x, y)| (x as f64, *y)).collect();
            let thin = thinned(&curve);
            for point in curve {
                let near = thin.windows(2).map(|two| distance(point, two[0], two[1]));
                // distances are worked out alike on both sides, so no rounding comes between
                prop_assert!(near.fold(f64::INFINITY, f64::min) <= UNSEEN);
            }
        }
    }

    #[test]
    fn a_straight_line_needs_its_ends_and_a_corner_stays() {
        let line = |count: u32| (0..count).map(|x| (f64::from(x), 2.0 * f64::from(x)));
        assert_eq!(
            thinned(&line(9).collect::<Vec<_>>()),
            [(0.0, 0.0), (8.0, 16.0)]
        );
        let bent: Vec<Point> = line(5).chain([(4.0, 0.0)]).collect();
        assert_eq!(thinned(&bent), [(0.0, 0.0), (4.0, 8.0), (4.0, 0.0)]);
    }

    #[test]
    fn short_curves_stay_as_they_are() {
        assert_eq!(thinned(&[]), []);
        assert_eq!(thinned(&[(1.0, 2.0)]), [(1.0, 2.0)]);
        let there_and_back = [(0.0, 0.0), (5.0, 0.0), (0.0, 0.0)];
        assert_eq!(thinned(&there_and_back), there_and_back);
    }
}
