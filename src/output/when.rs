//! How days, dates and times are written.

use jiff::ToSpan;
use jiff::civil::Date;

use crate::base::clock::{DAY, TimeOfDay};

/// `day 5 at 06:00`; a midnight closes its day, `day 5 at 24:00`, so that no run ends on a day it
/// does not have.
pub fn day_and_clock(minute: u32) -> String {
    match (minute / DAY, minute % DAY) {
        (day, 0) if day > 0 => format!("day {} at {}", day - 1, TimeOfDay(DAY)),
        (day, rest) => format!("day {day} at {}", TimeOfDay(rest)),
    }
}

/// The date of a day, when the date of filling is known.
pub fn date(filled_on: Option<Date>, day: u32) -> Option<Date> {
    filled_on.map(|start| start.saturating_add(i64::from(day).days()))
}

/// `2027-03-06`, or nothing.
pub fn iso_date(filled_on: Option<Date>, day: u32) -> String {
    date(filled_on, day).map_or(String::new(), |date| date.to_string())
}

/// `Sat`, or nothing.
pub fn weekday(filled_on: Option<Date>, day: u32) -> String {
    date(filled_on, day).map_or(String::new(), |date| date.strftime("%a").to_string())
}

/// `2027-03-06T10:00`, or `10:00` where no date is known.
pub fn iso_time(filled_on: Option<Date>, minute: u32) -> String {
    let clock = TimeOfDay::of(minute);
    match date(filled_on, minute / DAY) {
        Some(date) => format!("{date}T{clock}"),
        None => clock.to_string(),
    }
}

/// `day 23, Mon 29 Mar`, or `day 23` where no date is known.
pub fn day_in_words(filled_on: Option<Date>, day: u32) -> String {
    match date(filled_on, day) {
        Some(date) => format!("day {day}, {}", date.strftime("%a %-d %b")),
        None => format!("day {day}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date as civil;

    #[test]
    fn a_day_is_counted_from_the_date_of_filling() {
        let filled = Some(civil(2027, 3, 6));
        assert_eq!(iso_time(filled, 23 * DAY + 570), "2027-03-29T09:30");
        assert_eq!(day_in_words(filled, 23), "day 23, Mon 29 Mar");
        assert_eq!(weekday(filled, 0), "Sat");
        assert_eq!(iso_time(None, 23 * DAY + 570), "09:30");
        assert_eq!(day_and_clock(23 * DAY + 570), "day 23 at 09:30");
        assert_eq!(day_and_clock(57 * DAY), "day 56 at 24:00");
        assert_eq!(day_and_clock(0), "day 0 at 00:00");
    }
}
