//! Times of a day as hours: ranges of a curve, and how long it lies under a bound.

use super::rect::Point;

/// Lowest and highest value of a curve.
pub fn range(points: &[Point]) -> (f64, f64) {
    points
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| {
            (l.min(p.1), h.max(p.1))
        })
}

/// Where a curve lies under a bound, hours; crossings between two points are drawn straight.
pub fn under(points: &[Point], bound: f64) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = Vec::new();
    for two in points.windows(2) {
        let ((x0, y0), (x1, y1)) = (two[0], two[1]);
        if x1 <= x0 || (y0 >= bound && y1 >= bound) {
            continue;
        }
        let crossing = x0 + (bound - y0) / (y1 - y0) * (x1 - x0);
        let from = if y0 < bound { x0 } else { crossing };
        let until = if y1 < bound { x1 } else { crossing };
        match found.last_mut() {
            Some(last) if (last.1 - from).abs() < 1e-9 => last.1 = until,
            _ => found.push((from, until)),
        }
    }
    found
}

/// Hours in minutes, to the nearest five: points of a day's curve are five minutes apart.
pub fn rounded(hours: f64) -> u32 {
    (hours * 12.0).round() as u32 * 5
}

/// Minutes of stretches of hours.
pub fn minutes(stretches: &[(f64, f64)]) -> u32 {
    rounded(stretches.iter().map(|s| s.1 - s.0).sum())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_under_a_bound_is_cut_at_the_crossings() {
        let curve = [(0.0, 6.0), (2.0, 4.0), (3.0, 4.0), (4.0, 6.0)];
        assert_eq!(under(&curve, 5.0), [(1.0, 3.5)]);
        assert_eq!(minutes(&under(&curve, 5.0)), 150);
        assert_eq!(under(&curve, 3.0), []);
    }
}
