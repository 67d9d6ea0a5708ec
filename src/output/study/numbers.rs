//! Numbers with as many digits as count, however small they are, or as it takes to tell two of them apart.

use crate::base::maths::{exp10, log10};
use crate::output::chart::words::{number, short};

/// Most digits after the point of two numbers that are told apart.
const MOST_DIGITS: f64 = 6.0;
/// Digits of a power, as they are written above the line.
const RAISED: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];

/// A number with about two digits that count, however small it is: `0.043`, `4.3·10⁻⁵`.
pub fn two_digits(value: f64) -> String {
    match short(value) {
        words if words == "0" && value != 0.0 => with_power(value),
        words => words,
    }
}

/// `4.3·10⁻⁵`
fn with_power(value: f64) -> String {
    let written = format!("{value:.1e}"); // so that 9.96 becomes 1.0 of the next power
    let power: i32 = written
        .split_once('e')
        .and_then(|(_, power)| power.parse().ok())
        .unwrap_or(0);
    let digits = power.unsigned_abs().to_string();
    let raised = digits
        .bytes()
        .map(|digit| RAISED[usize::from(digit - b'0')]);
    let sign = if power < 0 { "⁻" } else { "" };
    let front = number(value / exp10(f64::from(power)), 1);
    format!("{front}·10{sign}{}", raised.collect::<String>())
}

/// Two numbers with two digits that count, or with as many more as it takes to tell them apart: `1.12` and `1.08`.
pub fn told_apart(values: [f64; 2]) -> [String; 2] {
    let plain = values.map(two_digits);
    let differ = |[one, other]: &[String; 2]| one != other;
    if values[0] == values[1] || differ(&plain) {
        return plain;
    }
    let decade = log10(values[0].abs().max(values[1].abs())).floor();
    let two = (1.0 - decade).clamp(0.0, MOST_DIGITS) as usize;
    let longer = (two + 1..=two + 3).map(|digits| values.map(|value| number(value, digits)));
    let mut longer = longer;
    longer.find(differ).unwrap_or(plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_that_look_alike_get_digits_until_they_do_not() {
        assert_eq!(told_apart([1.12, 1.08]), ["1.12", "1.08"]);
        assert_eq!(told_apart([0.92, 0.71]), ["0.92", "0.71"]);
        assert_eq!(told_apart([31.2, 30.9]), ["31.2", "30.9"]);
        assert_eq!(told_apart([0.0432, 0.0434]), ["0.0432", "0.0434"]);
        assert_eq!(told_apart([2.0, 2.0]), ["2.0", "2.0"]);
        assert_eq!(told_apart([4.31e-5, 8e-5]), ["4.3·10⁻⁵", "8.0·10⁻⁵"]);
    }

    #[test]
    fn what_is_very_small_is_written_with_its_power() {
        assert_eq!(two_digits(3.6e-6), "3.6·10⁻⁶");
        assert_eq!(two_digits(-9.96e-11), "−1.0·10⁻¹⁰");
        assert_eq!(two_digits(0.043), "0.043");
        assert_eq!(two_digits(0.0), "0");
    }
}
