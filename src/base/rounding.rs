//! What is left of a difference of equal numbers is rounding, and is nothing.

/// Differences smaller than this share of what they are the difference of are rounding: a few hundred of the last
/// places of a number.
const ROUNDING_FRAC: f64 = 1e-13;

/// A difference, or nothing where it is no more than rounding of numbers of this size.
///
/// ```text
/// d if |d| > 1e-13·size, else 0
/// ```
pub fn beyond_rounding(difference: f64, size: f64) -> f64 {
    match difference.abs() > ROUNDING_FRAC * size.abs() {
        true => difference,
        false => 0.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_equal_numbers_leave_is_nothing_and_small_differences_stay() {
        let left = (0.3 - 0.1) - 0.2;
        assert!(left != 0.0);
        assert_eq!(beyond_rounding(left, 0.3), 0.0);
        assert_eq!(beyond_rounding(-1e-9, 3.0), -1e-9);
        assert_eq!(beyond_rounding(0.0, 0.0), 0.0);
    }
}
