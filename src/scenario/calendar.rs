//! Days and dates. In days and dates `a..b` means through; day n is the nth day after filling.

use jiff::civil::{Date, Weekday};

use crate::base::clock::DAY;

use super::desk::Desk;
use super::problem::{Place, Problem};
use super::tree::{Node, Value};
use super::words::closest;

/// Days simulated past the end, so that the last weeks can be judged too.
pub const LOOKAHEAD_DAYS: u32 = 14;

/// The days of a scenario.
#[derive(Debug, Clone)]
pub struct Calendar {
    /// Date of day 0, if the scenario gives one.
    pub filled_on: Option<Date>,
    /// Minute of day 0 at which the tank is full.
    pub filled_at: u32,
    /// Number of the last day.
    pub last_day: u32,
    /// By how many days the filling is later than the scenario says: day numbers and weekdays go with it,
    /// dates stay.
    pub put_off_days: u32,
}

/// First and last day of a spell, and where it is written.
#[derive(Debug, Clone)]
pub struct Span {
    /// First day.
    pub first: u32,
    /// Last day.
    pub last: u32,
    /// Whether it is written as a range.
    pub is_range: bool,
    /// Where it is written.
    pub place: Place,
}

impl Calendar {
    /// The last day that is simulated.
    pub fn final_day(&self) -> u32 {
        self.last_day + LOOKAHEAD_DAYS
    }
    /// The weekday of a day.
    pub fn weekday(&self, day: u32) -> Option<Weekday> {
        Some(self.date(day)?.weekday())
    }
    /// The date of a day.
    pub fn date(&self, day: u32) -> Option<Date> {
        self.filled_on?
            .checked_add(jiff::Span::new().days(i64::from(day)))
            .ok()
    }
    /// A value as one day of the run: a number or a date.
    pub fn day(&self, desk: &Desk, path: &str, node: &Node) -> Option<u32> {
        let day = match &node.value {
            Value::Whole(number) => self.numbered(desk, path, *number, &node.place),
            Value::Text(text) if !text.contains("..") => {
                self.written(desk, path, text, &node.place)
            }
            Value::Moment(moment) => self.written(desk, path, &moment.to_string(), &node.place),
            other => {
                desk.problem(
                    Problem::at(
                        &node.place,
                        format!("{path} needs a day, but this is {}", other.words()),
                    )
                    .help("write a day number such as 14, or a date such as \"2027-03-20\""),
                );
                None
            }
        }?;
        self.inside(desk, path, day, &node.place).then_some(day)
    }
    /// A value as days: a number, a date, a range of them, or a list of all these.
    pub fn spans(&self, desk: &Desk, path: &str, node: &Node) -> Option<Vec<Span>> {
        match &node.value {
            Value::List(items) => {
                let parts: Vec<Option<Vec<Span>>> = items
                    .iter()
                    .map(|item| self.spans(desk, path, item))
                    .collect();
                let parts: Option<Vec<Vec<Span>>> = parts.into_iter().collect();
                Some(parts?.concat())
            }
            Value::Text(text) if text.contains("..") => {
                Some(vec![self.range(desk, path, text, &node.place)?])
            }
            _ => {
                let day = self.day(desk, path, node)?;
                Some(vec![Span {
                    first: day,
                    last: day,
                    is_range: false,
                    place: node.place.clone(),
                }])
            }
        }
    }
    /// Days of an absence. Where the filling was put off, what is over by then is left out.
    pub fn absences(&self, desk: &Desk, path: &str, node: &Node) -> Option<Vec<Span>> {
        if self.put_off_days == 0 {
            return self.spans(desk, path, node);
        }
        if let Value::List(items) = &node.value {
            let parts = items.iter().map(|item| self.absences(desk, path, item));
            return Some(parts.collect::<Option<Vec<_>>>()?.concat());
        }
        match self.begun(node) {
            Some(rest) => Some(rest.into_iter().collect()),
            None => self.spans(desk, path, node),
        }
    }
    /// Of a spell in dates that begins before the filling: what is left of it, if anything.
    fn begun(&self, node: &Node) -> Option<Option<Span>> {
        let text = node.value.written();
        let (first, last) = text.split_once("..").unwrap_or((&text, &text));
        let [first, last] = [first, last].map(|date| self.days_until(date.trim()));
        let (first, last) = (first?, last?);
        let rest = u32::try_from(last).ok().map(|last| Span {
            first: 0,
            last,
            is_range: true,
            place: node.place.clone(),
        });
        (first < 0 && first <= last).then_some(rest)
    }
    /// Days from the filling to a date, if it is one.
    fn days_until(&self, date: &str) -> Option<i64> {
        let date = Date::strptime("%Y-%m-%d", date).ok()?;
        let days = self.filled_on?.until(date).ok()?.get_days();
        Some(days.into())
    }
    fn range(&self, desk: &Desk, path: &str, text: &str, place: &Place) -> Option<Span> {
        let (from, through) = text.split_once("..")?;
        let first = self.written(desk, path, from.trim(), place)?;
        let last = self.written(desk, path, through.trim(), place)?;
        if last < first {
            desk.problem(
                Problem::at(place, format!("{path} = \"{text}\" ends before it begins"))
                    .label("the first day, then the last")
                    .help(format!(
                        "did you mean \"{}..{}\"?",
                        through.trim(),
                        from.trim()
                    )),
            );
            return None;
        }
        if !self.inside(desk, path, first, place) {
            return None;
        }
        if last > self.last_day {
            desk.notice(format!(
                "{path} = \"{text}\" goes on past day {}, the last day of the run",
                self.last_day
            ));
        }
        Some(Span {
            first,
            last,
            is_range: true,
            place: place.clone(),
        })
    }
    fn written(&self, desk: &Desk, path: &str, text: &str, place: &Place) -> Option<u32> {
        if let Ok(number) = text.parse::<i64>() {
            return self.numbered(desk, path, number, place);
        }
        let Ok(date) = Date::strptime("%Y-%m-%d", text) else {
            desk.problem(
                Problem::at(
                    place,
                    format!("{path}: \"{text}\" is neither a day number nor a date"),
                )
                .help("write a day number such as 14, a date such as 2027-03-20, or a range 1..7"),
            );
            return None;
        };
        let Some(filled_on) = self.filled_on else {
            desk.problem(
                Problem::at(
                    place,
                    format!("{path} has a date, but the scenario has no start"),
                )
                .label("a date needs to know the date of day 0")
                .help(START_LINE),
            );
            return None;
        };
        let days = filled_on
            .until(date)
            .map_or(-1, |span| i64::from(span.get_days()));
        if days < 0 {
            desk.problem(
                Problem::at(
                    place,
                    format!("{path}: {text} is before the filling on {filled_on}"),
                )
                .label(format!("day 0 is {filled_on}")),
            );
            return None;
        }
        u32::try_from(days).ok()
    }
    fn numbered(&self, desk: &Desk, path: &str, number: i64, place: &Place) -> Option<u32> {
        match u32::try_from(number) {
            Ok(day) if day < 10_000 => Some(day),
            _ => {
                desk.problem(
                    Problem::at(place, format!("{path}: {number} is no day of the run"))
                        .label(format!("allowed: 0 to {}", self.last_day)),
                );
                None
            }
        }
    }
    fn inside(&self, desk: &Desk, path: &str, day: u32, place: &Place) -> bool {
        if day > self.last_day {
            desk.problem(
                Problem::at(place, format!("{path}: day {day} is after the run ends"))
                    .label(format!("the last day is {}", self.last_day))
                    .help(format!(
                        "lengthen the run with length = {day}, or choose an earlier day"
                    )),
            );
        }
        day <= self.last_day
    }
    /// A value as weekdays.
    pub fn weekdays(&self, desk: &Desk, path: &str, node: &Node) -> Option<Vec<Weekday>> {
        let items: Vec<&Node> = match &node.value {
            Value::List(items) => items.iter().collect(),
            _ => vec![node],
        };
        let days: Option<Vec<Weekday>> = items
            .iter()
            .map(|item| weekday(desk, path, item))
            .collect::<Vec<_>>()
            .into_iter()
            .collect();
        let days = days?;
        if self.filled_on.is_none() {
            desk.problem(
                Problem::at(
                    &node.place,
                    format!("{path} names weekdays, but the scenario has no start"),
                )
                .label("weekdays need the date of day 0")
                .help(START_LINE),
            );
            return None;
        }
        Some(days)
    }
    /// The minute of a time on a day.
    pub fn minute(&self, day: u32, time: u32) -> u32 {
        day * DAY + time
    }
}

const START_LINE: &str =
    "add a line at the top of the file: start = \"2027-03-06\" (the date of filling)";

const WEEKDAYS: [(&str, &str, Weekday); 7] = [
    ("Mon", "Monday", Weekday::Monday),
    ("Tue", "Tuesday", Weekday::Tuesday),
    ("Wed", "Wednesday", Weekday::Wednesday),
    ("Thu", "Thursday", Weekday::Thursday),
    ("Fri", "Friday", Weekday::Friday),
    ("Sat", "Saturday", Weekday::Saturday),
    ("Sun", "Sunday", Weekday::Sunday),
];

fn weekday(desk: &Desk, path: &str, node: &Node) -> Option<Weekday> {
    let found = match &node.value {
        Value::Text(text) => WEEKDAYS
            .iter()
            .find(|(short, long, _)| {
                text.eq_ignore_ascii_case(short) || text.eq_ignore_ascii_case(long)
            })
            .map(|(_, _, day)| *day),
        _ => None,
    };
    if found.is_none() {
        let problem = Problem::at(
            &node.place,
            format!("{path}: {} is no weekday", node.value.shown()),
        )
        .label("allowed: Mon, Tue, Wed, Thu, Fri, Sat, Sun");
        let near = match &node.value {
            Value::Text(text) => closest(text, WEEKDAYS.iter().map(|(short, _, _)| *short)),
            _ => None,
        };
        desk.problem(match near {
            Some(near) => problem.help(format!("did you mean \"{near}\"?")),
            None => problem,
        });
    }
    found
}
