//! `[changes]`: when water is changed, how much, and when nobody is there.
//!
//! Beyond the last day water is changed as before it: by the rule of an entry that reaches it, and on days named one by
//! one as in the last weeks, so that a plan does as well whichever way it is written.

use crate::analysis::case::SetBy;
use crate::base::clock::TimeOfDay;
use crate::base::units::everyday;
use crate::engine::event::{Event, EventKind};
use crate::scenario::draft::Draft;
use crate::scenario::keys;
use crate::scenario::problem::{Place, Problem};
use crate::scenario::reader::{Read, Reader};
use crate::scenario::repeats;
use crate::scenario::timer;

/// Reads `[changes]`, the away days included.
pub fn read(file: &Reader<'_>, draft: &mut Draft<'_>) {
    let section = file.section("changes");
    draft.usual_time = usual_time(&section);
    draft.away = away(&section, draft);
    draft.missed = missed(&section, draft);
    let mut places = Vec::new();
    for entry in section.named("NAME") {
        let when = repeats::when(&entry, draft);
        let share = share(&entry);
        entry.close();
        if let (Some(when), Some(share)) = (when, share) {
            let kind = EventKind::Change { share };
            let when = when.and_again_beyond(&draft.calendar);
            draft.schedule(&entry.path, &when, &kind);
            places.extend(entry.place.clone().map(|place| (entry.path.clone(), place)));
        }
    }
    no_two_at_once(draft, &places);
    tell(draft);
}

fn tell(draft: &mut Draft<'_>) {
    let end = draft.calendar.minute(draft.calendar.last_day + 1, 0);
    let inside = |event: &&Event| event.kind.is_change() && event.minute < end;
    let count = draft.events.iter().filter(inside).count();
    if count == 0 {
        draft.desk.notice("no water changes planned");
    }
    let away = match draft.left_out.len() {
        0 => String::new(),
        left_out => format!(", {left_out} more left out (away or missed)"),
    };
    let planned = format!("{count} in {} days{away}", draft.calendar.last_day);
    draft.fact("Water changes", planned);
}

fn usual_time(section: &Reader<'_>) -> u32 {
    let usual = keys::key("changes.time").map_or("", |key| key.default);
    let usual = timer::parse_clock(usual).unwrap_or(0);
    let Some(entry) = section.wanted("time") else {
        section.note_default("time");
        return usual;
    };
    match timer::time_of_day(section.desk, &section.path_of("time"), &entry.node) {
        Some(minutes) => {
            section.given("time", &entry.node);
            minutes
        }
        None => usual,
    }
}

fn away(section: &Reader<'_>, draft: &Draft<'_>) -> Vec<(u32, u32)> {
    let Some(entry) = section.wanted("away") else {
        return Vec::new();
    };
    let spans = draft
        .calendar
        .absences(section.desk, &section.path_of("away"), &entry.node)
        .unwrap_or_default();
    section.given("away", &entry.node);
    let last_day = draft.calendar.last_day;
    let mut away: Vec<(u32, u32)> = spans
        .iter()
        .map(|span| (span.first, span.last.min(last_day)))
        .collect();
    away.sort_unstable();
    merged(&away)
}

/// Sorted spells without those that begin inside another.
fn merged(spells: &[(u32, u32)]) -> Vec<(u32, u32)> {
    let mut merged: Vec<(u32, u32)> = Vec::new();
    for &(first, last) in spells {
        match merged.last_mut() {
            Some(before) if first <= before.1 => before.1 = before.1.max(last),
            _ => merged.push((first, last)),
        }
    }
    merged
}

fn missed(section: &Reader<'_>, draft: &Draft<'_>) -> Vec<u32> {
    let Some(entry) = section.wanted("missed") else {
        return Vec::new();
    };
    let spans = draft
        .calendar
        .absences(section.desk, &section.path_of("missed"), &entry.node)
        .unwrap_or_default();
    section.given("missed", &entry.node);
    spans
        .iter()
        .flat_map(|span| span.first..=span.last.min(draft.calendar.last_day))
        .collect()
}

/// Reads `share`: of the water present, more than nothing, at most all of it.
fn share(entry: &Reader<'_>) -> Option<f64> {
    let share = entry.quantity("share", &everyday::SHARE, (0.001, 1.0));
    match &share {
        Read::Absent => {
            entry.missing("share");
            None
        }
        _ => share.value(),
    }
}

fn no_two_at_once(draft: &Draft<'_>, places: &[(String, Place)]) {
    let mut changes: Vec<&Event> = draft
        .events
        .iter()
        .filter(|event| event.kind.is_change())
        .collect();
    changes.sort_by(|a, b| (a.minute, &a.name).cmp(&(b.minute, &b.name)));
    let mut told = Vec::new();
    for pair in changes.windows(2) {
        let (first, second) = (pair[0], pair[1]);
        let names = (first.name.clone(), second.name.clone());
        if first.minute != second.minute || told.contains(&names) {
            continue;
        }
        let place = |name: &str| places.iter().find(|(n, _)| n == name).map(|(_, p)| p);
        if let (Some(a), Some(b)) = (place(&first.name), place(&second.name)) {
            let day = first.minute / crate::base::clock::DAY;
            let time = TimeOfDay::of(first.minute);
            draft.desk.problem(
                Problem::at(
                    b,
                    format!(
                        "{} and {} both change water on day {day} at {time}",
                        first.name, second.name
                    ),
                )
                .label("this one")
                .also(a, "and this one")
                .help("let one of them begin a day later, or give it a time of its own"),
            );
        }
        told.push(names);
    }
}

/// Lists what is left out, once everything is scheduled.
pub fn tell_left_out(draft: &mut Draft<'_>) {
    let last_day = draft.calendar.last_day;
    draft.left_out.retain(|(day, _)| *day <= last_day);
    draft.left_out.sort();
    if !draft.away.is_empty() {
        draft.desk.resolve(
            "changes.left_out",
            format!("{} entries on away or missed days", draft.left_out.len()),
            SetBy::WorkedOut(
                "changes, doses, tuning, trims and cleaning are left out, not moved".to_string(),
            ),
        );
    }
}
