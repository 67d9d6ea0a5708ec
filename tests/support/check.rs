//! A check against the outside: gathers differences and holds the largest against the page.

use super::page::{self, Line, ROUNDING, rounded_up};

/// Set to `write`, what is found is written into the page instead of held against it.
const REWRITE: (&str, &str) = ("PAGE", "write");

/// The differences of one row of `tests/README.md`.
pub struct Check {
    compared: &'static str,
    worst: f64,
    at: String,
    count: usize,
}

impl Check {
    /// The row with these words in its first cell.
    pub fn of(compared: &'static str) -> Check {
        Check {
            compared,
            worst: 0.0,
            at: "nowhere".into(),
            count: 0,
        }
    }
    /// One difference, in the unit of the row, with where it was.
    pub fn see(&mut self, difference: f64, at: impl std::fmt::Debug) {
        self.count += 1;
        // written so that a NaN is the worst
        if difference.is_nan() || difference.abs() > self.worst {
            self.worst = difference.abs();
            self.at = format!("{at:?}");
        }
    }
    /// The relative difference of two values.
    pub fn see_share(&mut self, found: f64, expected: f64, at: impl std::fmt::Debug) {
        self.see(found / expected - 1.0, at);
    }
    /// The largest difference so far.
    pub fn worst(&self) -> f64 {
        self.worst
    }
    /// How many differences there are so far.
    pub fn count(&self) -> usize {
        self.count
    }
    /// Asserts that so many values were compared, that the largest difference is within the page's
    /// tolerance, and that the page says truly how close it came.
    pub fn holds(self, count: usize) {
        let (what, at) = (self.compared, &self.at);
        println!("{what}: {:.3e} at most, {at}", self.worst);
        assert_eq!(self.count, count, "{what}: values compared");
        let row = page::row(what);
        let tolerance = row.tolerance.number().expect("a tolerance in numbers");
        let within = self.worst <= tolerance;
        assert!(
            within,
            "{what}: {} at {at}, allowed {tolerance}",
            self.worst
        );
        if std::env::var(REWRITE.0).is_ok_and(|word| word == REWRITE.1) {
            page::write_found(what, self.worst);
        } else if let Some(stated) = untrue(&row, self.worst) {
            let (found, new) = (self.worst, rounded_up(self.worst));
            let how = format!("{}={} cargo test", REWRITE.0, REWRITE.1);
            panic!("{what}: the page says {stated}, found {found} ({new}); `{how}` writes it anew");
        }
    }
}

/// What a row says was found, if that is not true of what was: less, or more than twice as much.
pub fn untrue(row: &Line, worst: f64) -> Option<f64> {
    let stated = row.found.number().expect("what was found, in numbers");
    // printed with two digits, so true to a millionth of what it says
    let exceeded = worst.is_nan() || worst > stated * (1.0 + 1e-6);
    let modest = stated > (2.0 * worst).max(ROUNDING);
    (exceeded || modest).then_some(stated)
}

/// Half a unit of the last digit of a printed number.
pub fn half_a_digit(printed: &str) -> f64 {
    let (mantissa, exponent) = printed.split_once('e').unwrap_or((printed, "0"));
    let decimals = mantissa.split_once('.').map_or(0, |(_, d)| d.len() as i32);
    0.5 * 10f64.powi(exponent.parse::<i32>().expect("an exponent") - decimals)
}

/// How far a value is from a printed one, in units of its last digit: half of one rounds to it.
pub fn digits_apart(found: f64, printed: &str) -> f64 {
    let value: f64 = printed.parse().expect("a number");
    (found - value) / (2.0 * half_a_digit(printed))
}
