//! How numbers are written into files: six significant digits, never NaN.

mod digits;

use crate::base::clock::DAY;

/// One day in the last place of [`decimal_day`].
const TEN_THOUSAND: u32 = 10_000;

/// A number with six significant digits, without trailing zeros.
///
/// Very small and very large ones are written with an exponent, which every spreadsheet reads.
pub fn six_digits(value: f64) -> String {
    let mut text = String::new();
    push_six_digits(&mut text, value);
    text
}

/// Appends what [`six_digits`] writes.
///
/// Nearly every number is written from one whole number of six digits; the few that stand next to
/// the middle between two of them, or are far out, are left to the standard library, which decides
/// by the exact value.
pub fn push_six_digits(text: &mut String, value: f64) {
    match digits::of(value) {
        Some(digits) => digits.push(text),
        None => text.push_str(&by_the_exact_value(value)),
    }
}

fn by_the_exact_value(value: f64) -> String {
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

/// Days as a decimal number with four places (a minute is 0.0007 days): `0.4167` for 10:00. Halves of
/// the last place are rounded up.
pub fn decimal_day(minute: u32) -> String {
    let (day, rest) = (minute / DAY, minute % DAY);
    let places = (rest * TEN_THOUSAND + DAY / 2) / DAY;
    match places {
        0 => day.to_string(),
        _ => format!("{day}.{places:04}").trim_end_matches('0').into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_quick_way_writes_what_the_exact_one_writes(value in any::<f64>(), near in -25.0..28.0_f64) {
            prop_assert_eq!(six_digits(value), by_the_exact_value(value));
            let usual = value.signum() * crate::base::maths::exp10(near);
            prop_assert_eq!(six_digits(usual), by_the_exact_value(usual));
        }

        #[test]
        fn numbers_beside_the_middle_of_two_are_rounded_by_their_exact_value(
            digits in 99_999_u32..1_000_000, power in -20_i32..20, steps in -2_i32..3
        ) {
            let middle: f64 = format!("{digits}5e{power}").parse().unwrap();
            let beside = f64::from_bits(middle.to_bits().wrapping_add_signed(steps.into()));
            prop_assert_eq!(six_digits(beside), by_the_exact_value(beside));
        }
    }

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
