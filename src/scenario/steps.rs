//! A timer whose lines change on given days: light, gas and air share this shape.
//!
//! Each step holds from midnight of its day until a later one takes over, without a slope
//! between them; what a step does not say stays as before.

use crate::base::clock::Window;
use crate::engine::input::TimerLine;

use super::calendar::Calendar;
use super::draft::Draft;
use super::problem::{Place, Problem};
use super::reader::{Read, Reader, Said};
use super::repeats;
use super::timer;

/// What a step says.
pub struct Step<V> {
    /// Dotted path of the entry.
    pub name: String,
    /// First day.
    pub day: u32,
    /// Hours, if it says them.
    pub window: Option<Window>,
    /// Value, if it says it.
    pub value: Option<V>,
    place: Option<Place>,
}

/// A line with the entry that made it.
pub struct Line<V> {
    /// Dotted path of the entry.
    pub name: String,
    /// First day.
    pub day: u32,
    /// Hours.
    pub window: Window,
    /// Value while on.
    pub value: V,
}

/// Reads `[….steps]`; `value` reads the value of a step.
pub fn steps<V>(
    section: &Reader<'_>,
    calendar: &Calendar,
    value: impl Fn(&Reader<'_>) -> Read<V>,
) -> Vec<Step<V>> {
    let mut steps = Vec::new();
    for entry in section.section("steps").named("NAME") {
        let day = repeats::one_day(&entry, calendar, None);
        let window = timer::timer(&entry, "on");
        never_on(&entry, &window);
        let value = value(&entry);
        entry.close();
        if let Some(day) = day {
            steps.push(Step {
                name: entry.path.clone(),
                day,
                window: window.value(),
                value: value.value(),
                place: entry.place.clone(),
            });
        }
    }
    steps.sort_by(|a, b| (a.day, &a.name).cmp(&(b.day, &b.name)));
    steps
}

/// A timer that never comes on is a mistake.
pub fn never_on(reader: &Reader<'_>, window: &Read<Window>) {
    if let Read::Given(hours, place) = window
        && hours.minutes() == 0
    {
        reader.desk.problem(
            Problem::at(place, format!("{} is never on", reader.path_of("on")))
                .label("on and off are the same time")
                .help("for the whole day write \"00:00..24:00\"; for never leave the section out"),
        );
    }
}

/// The lines of a first line and its steps.
pub fn lines<V: Clone>(draft: &Draft<'_>, first: Line<V>, steps: &[Step<V>]) -> Vec<Line<V>> {
    let mut lines = vec![first];
    for step in steps {
        let before = &lines[lines.len() - 1];
        if step.day <= before.day {
            if let Some(place) = &step.place {
                draft.desk.problem(
                    Problem::at(place, format!("{} is not after {}", step.name, before.name))
                        .label(format!("{} holds from day {}", before.name, before.day)),
                );
            }
            continue;
        }
        lines.push(Line {
            name: step.name.clone(),
            day: step.day,
            window: step.window.unwrap_or(before.window),
            value: step.value.clone().unwrap_or_else(|| before.value.clone()),
        });
    }
    lines
}

/// The lines with values as they are in the central run.
pub fn plain(lines: &[Line<Said>]) -> Vec<Line<f64>> {
    let plain = |line: &Line<Said>| Line {
        name: line.name.clone(),
        day: line.day,
        window: line.window,
        value: line.value.value,
    };
    lines.iter().map(plain).collect()
}

/// Lines for the engine.
pub fn timer_lines(lines: &[Line<f64>]) -> Vec<TimerLine> {
    lines
        .iter()
        .map(|line| TimerLine {
            from_day: line.day,
            window: line.window,
            value: line.value,
        })
        .collect()
}
