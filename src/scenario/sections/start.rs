//! `start`, `length` and `[start_up]`: when the tank is full, how long the run is, what came before.

use jiff::ToSpan;
use jiff::civil::{Date, DateTime};

use crate::analysis::case::SetBy;
use crate::base::clock::HOUR;
use crate::base::units::everyday;

use crate::scenario::calendar::Calendar;
use crate::scenario::desk::Desk;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::Reader;
use crate::scenario::tree::{Node, Value};

/// Reads `start` and `length`; the filling may be put off by some days.
pub fn calendar(file: &Reader<'_>, put_off_days: u32) -> Calendar {
    let (filled_on, filled_at) = match file.wanted("start") {
        None => {
            file.note_default("start");
            (None, 0)
        }
        Some(entry) => match moment(file.desk, &entry.node) {
            Some((date, minute)) => {
                file.given("start", &entry.node);
                (Some(date), minute)
            }
            // a stand-in, so that dates elsewhere are not called wrong because of this one
            None => (Date::new(2027, 1, 1).ok(), 0),
        },
    };
    let later = i64::from(put_off_days).days();
    Calendar {
        filled_on: filled_on.map(|date| date.saturating_add(later)),
        filled_at,
        last_day: file.count_or_default("length", (1, 366)),
        put_off_days,
    }
}

/// A date, or a date and a time of day.
fn moment(desk: &Desk, node: &Node) -> Option<(Date, u32)> {
    let text = match &node.value {
        Value::Text(text) => text.trim().to_string(),
        Value::Moment(moment) => moment.to_string().replace('T', " "),
        _ => String::new(),
    };
    let text = text
        .strip_suffix(":00")
        .filter(|t| t.matches(':').count() == 1)
        .unwrap_or(&text);
    if let Ok(date) = Date::strptime("%Y-%m-%d", text) {
        return Some((date, 0));
    }
    if let Ok(moment) = DateTime::strptime("%Y-%m-%d %H:%M", text) {
        let minute = moment.hour() as u32 * HOUR + moment.minute() as u32;
        return Some((moment.date(), minute));
    }
    desk.problem(
        Problem::at(
            &node.place,
            format!("start is {}, which is no date", node.value.words()),
        )
        .label("year-month-day, with or without the time")
        .help("write it like \"2027-03-06\" or \"2027-03-06 10:00\""),
    );
    None
}

/// What the days before the tank is planted were like.
pub struct StartUp {
    /// Days the soil stood moist before filling.
    pub dry_days: f64,
}

/// Reads `[start_up]`; the dark days go into the draft.
pub fn start_up(file: &Reader<'_>, draft: &mut Draft<'_>) -> StartUp {
    let section = file.section("start_up");
    let longest = f64::from(draft.calendar.last_day);
    let dark = section.quantity("dark", &everyday::DURATION, (0.0, longest));
    let dry = section.quantity("dry", &everyday::DURATION, (0.0, 366.0));
    section.close();
    draft.dark_days = dark.or(0.0).round() as u32;
    if draft.dark_days > 0 {
        draft.desk.resolve(
            "start_up.dark_through",
            format!("day {}", draft.dark_days - 1),
            SetBy::WorkedOut("light, gas and plants begin on the day after".to_string()),
        );
    }
    StartUp {
        dry_days: dry.or(0.0),
    }
}
