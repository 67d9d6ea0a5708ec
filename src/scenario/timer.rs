//! Times of day and timers. In a timer `a..b` means on from a until b, past midnight allowed.

use crate::analysis::case::SetBy;
use crate::base::clock::{DAY, HOUR, TimeOfDay, Window};
use crate::base::units::{digits, everyday};

use super::desk::Desk;
use super::problem::{Place, Problem};
use super::reader::{Read, Reader, quantity_of};
use super::tree::{Node, Table, Value};

/// A value as a time of day, in minutes since midnight.
pub fn time_of_day(desk: &Desk, path: &str, node: &Node) -> Option<u32> {
    match &node.value {
        Value::Text(text) => clock(desk, path, text, Part::Alone, &node.place),
        Value::Moment(moment) => {
            let written = moment.to_string();
            let minutes = &written[..5.min(written.len())];
            clock(desk, path, minutes, Part::Alone, &node.place)
        }
        other => {
            desk.problem(
                Problem::at(
                    &node.place,
                    format!("{path} needs a time of day, but this is {}", other.words()),
                )
                .help("write it like \"09:30\""),
            );
            None
        }
    }
}

/// What a time of day stands for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Part {
    Alone,
    On,
    Off,
}

fn clock(desk: &Desk, path: &str, text: &str, part: Part, place: &Place) -> Option<u32> {
    let minutes = parse_clock(text);
    let allowed = minutes.filter(|&m| m < DAY || (part == Part::Off && m == DAY));
    if allowed.is_none() {
        let (hours, like) = match part {
            Part::Alone => ("00 to 23", "09:30"),
            Part::On => ("00 to 23", "20:00..08:00"),
            Part::Off => ("00 to 23, or 24:00", "20:00..08:00"),
        };
        desk.problem(
            Problem::at(place, format!("{path}: \"{text}\" is not a time of day"))
                .label(format!("hours {hours}, minutes 00 to 59"))
                .help(format!("write it like \"{like}\"")),
        );
    }
    allowed
}

/// `9:30`, `09:30`, `24:00`.
pub fn parse_clock(text: &str) -> Option<u32> {
    let (hour, minute) = text.split_once(':')?;
    let number = |text: &str| {
        let plain = (1..=2).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
        plain.then(|| text.parse::<u32>().ok()).flatten()
    };
    let (hour, minute) = (number(hour)?, number(minute)?);
    let whole = hour < 24 && minute < 60 || hour == 24 && minute == 0;
    (whole && text.len() >= 4).then_some(hour * HOUR + minute)
}

/// A timer.
///
/// Written as `"20:00..08:00"` or `{ from = "20:00", for = "12 h" }`; both are noted as
/// `….from` and `….for`.
pub fn timer(reader: &Reader<'_>, key: &'static str) -> Read<Window> {
    let Some(entry) = reader.wanted(key) else {
        return Read::Absent;
    };
    let path = reader.path_of(key);
    match window(reader.desk, &path, &entry.node) {
        Some(window) => {
            note(reader.desk, &path, window);
            Read::Given(window, entry.node.place.clone())
        }
        None => Read::Bad(entry.node.place.clone()),
    }
}

fn note(desk: &Desk, path: &str, window: Window) {
    let hours = f64::from(window.minutes()) / f64::from(HOUR);
    desk.resolve(format!("{path}.from"), window.on.to_string(), SetBy::Given);
    desk.resolve(
        format!("{path}.for"),
        format!("{} h", digits(hours)),
        SetBy::Given,
    );
}

/// A value as a window of the day.
pub fn window(desk: &Desk, path: &str, node: &Node) -> Option<Window> {
    match &node.value {
        Value::Text(text) => match text.split_once("..") {
            Some((on, off)) => {
                let on = clock(desk, path, on.trim(), Part::On, &node.place);
                let off = clock(desk, path, off.trim(), Part::Off, &node.place);
                Some(Window {
                    on: TimeOfDay(on?),
                    off: TimeOfDay(off?),
                })
            }
            None => not_a_timer(desk, path, node),
        },
        Value::Table(table) => from_for(desk, path, node, table),
        _ => not_a_timer(desk, path, node),
    }
}

fn not_a_timer(desk: &Desk, path: &str, node: &Node) -> Option<Window> {
    desk.problem(
        Problem::at(
            &node.place,
            format!(
                "{path} needs times on and off, but this is {}",
                node.value.words()
            ),
        )
        .help("write it like \"20:00..08:00\" or { from = \"20:00\", for = \"12 h\" }"),
    );
    None
}

fn from_for(desk: &Desk, path: &str, node: &Node, table: &Table) -> Option<Window> {
    let (from, minutes) = start_and_length(desk, path, node, table, 1.0)?;
    if minutes >= DAY {
        return Some(Window {
            on: TimeOfDay(0),
            off: TimeOfDay(DAY),
        });
    }
    let until = from + minutes;
    let off = if until > DAY { until - DAY } else { until };
    Some(Window {
        on: TimeOfDay(from),
        off: TimeOfDay(off),
    })
}

/// `{ from = "20:00", for = "12 h" }` as minute of the day and number of minutes.
pub fn start_and_length(
    desk: &Desk,
    path: &str,
    node: &Node,
    table: &Table,
    longest_days: f64,
) -> Option<(u32, u32)> {
    for entry in &table.entries {
        if !matches!(entry.key.as_str(), "from" | "for") {
            desk.problem(
                Problem::at(&entry.key_place, format!("{path} has no key {}", entry.key))
                    .label("known here: from, for"),
            );
            return None;
        }
    }
    let (Some(from), Some(length)) = (table.get("from"), table.get("for")) else {
        not_a_timer(desk, path, node);
        return None;
    };
    let start = time_of_day(desk, &format!("{path}.from"), &from.node);
    let days = quantity_of(
        desk,
        &format!("{path}.for"),
        &length.node,
        &everyday::DURATION,
        (0.0, longest_days),
    );
    Some((start?, (days? * f64::from(DAY)).round() as u32))
}

/// The two parts of a timer written as `"20:00..08:00"`, if a text is one: from, and for how long.
pub fn parts(text: &str) -> Option<(String, String)> {
    let (on, off) = text.split_once("..")?;
    let window = Window {
        on: TimeOfDay(parse_clock(on.trim())?),
        off: TimeOfDay(parse_clock(off.trim())?),
    };
    let hours = f64::from(window.minutes()) / f64::from(HOUR);
    Some((window.on.to_string(), format!("{} h", digits(hours))))
}
