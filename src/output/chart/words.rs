//! Numbers, dates and spans of time as the charts write them.

use jiff::ToSpan;
use jiff::civil::Date;

use crate::base::clock::{DAY, HOUR, TimeOfDay};
use crate::base::shown::grouped;

/// A number with so many digits after the point, with a true minus sign; never "−0".
pub fn number(value: f64, digits: usize) -> String {
    let text = format!("{:.digits$}", value.abs());
    let is_zero = text.chars().all(|c| c == '0' || c == '.');
    if value < 0.0 && !is_zero {
        format!("−{text}")
    } else {
        text
    }
}

/// A number with about two digits that count: `0.043`, `0.43`, `4.3`, `43`, `430`.
pub fn short(value: f64) -> String {
    let digits = match value.abs() {
        size if size >= 9.95 => 0,
        size if size >= 0.995 => 1,
        size if size >= 0.0995 => 2,
        _ => 3,
    };
    if value.abs() < 0.0005 {
        return "0".to_string();
    }
    number(value, digits)
}

/// A number to hundredths while it is small: `0.00`, `3.12`, `31`.
pub fn hundredths(value: f64) -> String {
    if value.abs() < 9.995 {
        number(value, 2)
    } else {
        number(value, 0)
    }
}

/// Formulas with their numbers below the line, as charts write them: `O₂`, `CO₂`, `mg NH₄/L`. Names that are typed,
/// such as `K_NO2`, stay as they are.
pub fn formulas(text: &str) -> String {
    let written = |word: &str| {
        let all = FORMULAS.iter().filter(|_| !word.contains('_'));
        all.fold(word.to_string(), |word, (plain, written)| {
            word.replace(plain, written)
        })
    };
    let words: Vec<String> = text.split(' ').map(written).collect();
    words.join(" ")
}

/// Ends of formulas as they are typed, and as they are written.
const FORMULAS: [(&str, &str); 5] = [
    ("O2", "O₂"),
    ("NH3", "NH₃"),
    ("NH4", "NH₄"),
    ("NO3", "NO₃"),
    ("PO4", "PO₄"),
];

/// A number without idle zeros, to three digits after the point.
pub fn trimmed(value: f64) -> String {
    let text = number(value, 3);
    text.trim_end_matches('0').trim_end_matches('.').to_string()
}

/// A number with its sign, `+1.2` or `−1.2`; a bare zero when it rounds to nothing.
pub fn signed(value: f64, digits: usize) -> String {
    let text = number(value, digits);
    let is_zero = text.chars().all(|c| c == '0' || c == '.');
    if value > 0.0 && !is_zero {
        format!("+{text}")
    } else {
        text
    }
}

/// An amount of nitrogen: `38 mg`, `1.34 g`.
pub fn milligrams(value: f64) -> String {
    if value.abs() >= 999.5 {
        format!("{} g", number(value / 1000.0, 2))
    } else {
        format!("{} mg", number(value, 0))
    }
}

/// A span of time: `25 min`, `3 h`, `3 h 20`, `412 h`.
pub fn span(minutes: u32) -> String {
    match (minutes / HOUR, minutes % HOUR) {
        (hours, _) if hours >= 100 => format!("{hours} h"),
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes:02}"),
    }
}

/// `1 day`, `2 days`.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{} {many}", grouped(count))
    }
}

/// `2`, `2 and 13`, `2, 13 and 28`.
pub fn list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [front @ .., last] => format!("{} and {last}", front.join(", ")),
    }
}

/// The calendar of a run: day numbers, and dates when the day of filling is known.
#[derive(Debug, Clone, Copy)]
pub struct Calendar {
    /// Date of day 0.
    pub filled_on: Option<Date>,
}

impl Calendar {
    fn date(&self, day: u32) -> Option<Date> {
        self.filled_on?.checked_add(i64::from(day).days()).ok()
    }
    /// `14 Mar`, when dates are known.
    pub fn short_date(&self, day: u32) -> Option<String> {
        Some(self.date(day)?.strftime("%-d %b").to_string())
    }
    /// `day 8`, or `day 8, Sun 14 Mar` when dates are known.
    pub fn day(&self, day: u32) -> String {
        match self.date(day) {
            Some(date) => format!("day {day}, {}", date.strftime("%a %-d %b")),
            None => format!("day {day}"),
        }
    }
    /// `Sun 14 Mar 09:30`, or `day 8, 09:30`.
    pub fn moment(&self, minute: u32) -> String {
        let (day, time) = (minute / DAY, TimeOfDay::of(minute));
        match self.date(day) {
            Some(date) => format!("{} {time}", date.strftime("%a %-d %b")),
            None => format!("day {day}, {time}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_about_two_digits() {
        let shown: Vec<String> = [430.2, 43.1, 4.31, 0.431, 0.0431, 0.00001, -2.0]
            .map(short)
            .into();
        assert_eq!(shown, ["430", "43", "4.3", "0.43", "0.043", "0", "−2.0"]);
    }

    #[test]
    fn formulas_are_written_as_such_but_not_within_names_that_are_typed() {
        assert_eq!(formulas("mg NH4/L of CO2"), "mg NH₄/L of CO₂");
        assert_eq!(formulas("nitrite (NO2), K_NO2"), "nitrite (NO₂), K_NO2");
    }

    #[test]
    fn a_rounded_zero_has_no_sign() {
        assert_eq!(
            (number(-0.001, 1), signed(0.001, 1)),
            ("0.0".into(), "0.0".into())
        );
        assert_eq!(signed(0.3, 1), "+0.3");
    }

    #[test]
    fn dates_follow_the_day_of_filling() {
        let with = Calendar {
            filled_on: Some(jiff::civil::date(2027, 3, 6)),
        };
        assert_eq!(with.day(8), "day 8, Sun 14 Mar");
        assert_eq!(with.moment(8 * DAY + 570), "Sun 14 Mar 09:30");
        let without = Calendar { filled_on: None };
        assert_eq!(without.moment(8 * DAY + 570), "day 8, 09:30");
        assert_eq!(without.short_date(8), None);
    }

    #[test]
    fn spans_and_lists_read_like_speech() {
        assert_eq!(
            [span(25), span(180), span(200)],
            ["25 min", "3 h", "3 h 20"]
        );
        let days = ["2", "13", "28"].map(String::from);
        assert_eq!(list(&days), "2, 13 and 28");
        assert_eq!(list(&days[..1]), "2");
    }
}
