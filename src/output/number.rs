//! How numbers are written into files: six significant digits, never NaN.

/// A number with six significant digits, without trailing zeros.
///
/// Very small and very large ones are written with an exponent, which every spreadsheet reads.
pub fn six_digits(value: f64) -> String {
    let rounded: f64 = format!("{value:.5e}")
        .parse()
        .expect("a number just written can be read");
    if rounded == 0.0 {
        return "0".into();
    }
    let size = rounded.abs();
    if !(1e-6..1e15).contains(&size) {
        format!("{rounded:e}")
    } else {
        format!("{rounded}")
    }
}

/// Days as a decimal number with four places (a minute is 0.0007 days): `0.4167` for 10:00.
pub fn decimal_day(minute: u32) -> String {
    let written = format!("{:.4}", crate::base::clock::days(minute));
    written.trim_end_matches('0').trim_end_matches('.').into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_digits_are_kept_and_no_more() {
        let written = [1.0 / 3.0, 1234567.0, -0.0, 27.5, 1.5e-9, -2.0].map(six_digits);
        assert_eq!(
            written,
            ["0.333333", "1234570", "0", "27.5", "1.5e-9", "-2"]
        );
    }

    #[test]
    fn ten_in_the_morning_of_day_0_is_0_4167() {
        assert_eq!(decimal_day(600), "0.4167");
        assert_eq!(decimal_day(57 * 1440), "57");
        assert_ne!(decimal_day(56 * 1440), decimal_day(56 * 1440 + 1));
    }
}
