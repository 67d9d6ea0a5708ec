//! Values and settings of a sweep in a few words.

use crate::analysis::compare::lines::Line;
use crate::analysis::compare::value::Value;
use crate::analysis::figure_list::Better;
use crate::analysis::sweep::axis::Axis;
use crate::analysis::sweep::border::is_ready_day;
use crate::output::chart::words::{number, short, trimmed};

/// Units that are short enough to stand behind every number.
const SHORT_UNITS: [&str; 6] = ["L", "g", "h", "dKH", "°C", "of 100"];

/// What an axis is set to: `20 %`, `every 3 days`, `day 5`.
pub fn setting(axis: &Axis, place: usize) -> String {
    let setting = &axis.settings[place];
    match (axis.last_name(), setting.number) {
        ("every", 1.0) => "every day".to_string(),
        ("every", _) => format!("every {} days", setting.words),
        ("day" | "first_day", _) => format!("day {}", setting.words),
        _ => setting.words.clone(),
    }
}

/// A point: `every 3 days, 40 %`.
pub fn point(axes: &[Axis], at: &[usize]) -> String {
    let settings = axes
        .iter()
        .zip(at)
        .map(|(axis, &place)| setting(axis, place));
    settings.collect::<Vec<_>>().join(", ")
}

/// The middle of a figure as a bare number: `3.1`, `34`, `later`.
pub fn bare(line: &Line, value: &Value) -> String {
    match value {
        Value::Nothing => "–".to_string(),
        Value::Later => "later".to_string(),
        Value::One(middle) | Value::Band([_, middle, _]) => digits(line, *middle),
    }
}

/// A number of a figure; days, visits and tanks are whole.
pub fn digits(line: &Line, value: f64) -> String {
    let is_whole = line.unit == "day" || line.unit == "of 100" || line.name == "visits";
    match is_whole {
        true => number(value, 0),
        false => short(value),
    }
}

/// The same with what it is of, where that is short: `265 L`, `day 34`, `3.1`.
pub fn small(line: &Line, value: &Value) -> String {
    let words = bare(line, value);
    match (line.unit, value) {
        (_, Value::Nothing | Value::Later) => words,
        ("day", _) => format!("day {words}"),
        (unit, _) if SHORT_UNITS.contains(&unit) => format!("{words} {unit}"),
        _ => words,
    }
}

/// The same as part of a sentence: `3.1 mg N/L`, `day 34`, `later than day 56`.
pub fn full(line: &Line, value: &Value, last_day: u32) -> String {
    let words = bare(line, value);
    match (line.unit, value) {
        (_, Value::Nothing) => "nothing".to_string(),
        (_, Value::Later) => format!("later than day {last_day}"),
        ("day", _) => format!("day {words}"),
        ("" | "1" | "money", _) => words,
        (unit, _) => format!("{words} {unit}"),
    }
}

/// What a figure is, with its unit: `peak ammonia, mg N/L`.
pub fn with_unit(line: &Line) -> String {
    match unit(line) {
        "" => line.short.to_string(),
        unit => format!("{}, {unit}", line.short),
    }
}

/// The unit as it is shown; empty for days, counts and pH.
pub fn unit(line: &Line) -> &'static str {
    match line.unit {
        "" | "1" | "day" => "",
        unit => unit,
    }
}

/// What the points on the better side of a border have: `worst night O2 5 mg/L or more`.
pub fn kept(line: &Line, at: f64) -> String {
    let words = digits(line, at);
    if is_ready_day(line) {
        return format!("ready by day {words}");
    }
    let limit = [trimmed(at), unit(line).to_string()];
    let limit = limit.join(" ");
    let limit = limit.trim_end();
    match line.better {
        Better::More => format!("{} {limit} or more", line.short),
        _ => format!("{} {limit} or less", line.short),
    }
}
