//! Times as hours: ranges of a curve, and stretches in minutes.

use crate::analysis::beyond::together;

use super::rect::Point;

/// Lowest and highest value of a curve.
pub fn range(points: &[Point]) -> (f64, f64) {
    points
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), p| {
            (l.min(p.1), h.max(p.1))
        })
}

/// Hours in minutes, to the nearest five: points of a day's curve are five minutes apart.
pub fn rounded(hours: f64) -> u32 {
    (hours * 12.0).round() as u32 * 5
}

/// Minutes of stretches of hours.
pub fn minutes(stretches: &[(f64, f64)]) -> u32 {
    rounded(together(stretches))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stretches_are_told_to_five_minutes() {
        assert_eq!(minutes(&[(1.0, 3.5)]), 150);
        assert_eq!(minutes(&[(1.0, 1.03), (2.0, 2.03)]), 5);
    }
}
