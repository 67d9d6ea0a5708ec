//! A scenario as understood: the tank, the calendar, and every value with what set it.

use crate::analysis::case::{Case, Resolved, SetBy};
use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::event::{Event, EventKind};
use crate::output::when::day_in_words;

use super::words::{counted, list, short};
use super::{Page, Tone};

/// The block of facts, and the one among them that needs no label of its own.
const TANK: &str = "Tank";

/// The whole page.
pub fn page(case: &Case) -> Page {
    let mut page = Page::default();
    page.block("Scenario", Tone::Strong, case.name.as_str());
    for (at, (label, value)) in case.facts.iter().enumerate() {
        let words = match label.as_str() {
            TANK => value.clone(),
            label => format!("{label}: {value}"),
        };
        page.block(if at == 0 { TANK } else { "" }, Tone::Plain, words);
    }
    page.gap();
    calendar(&mut page, case);
    page.gap();
    values(&mut page, case);
    super::assumed::notices(&mut page, &case.notices);
    page.gap();
    page.line(
        Tone::Plain,
        "The file is right. Nothing was run and nothing written.",
    );
    page
}

/// One line per entry that repeats or happens, then switches and absences.
fn calendar(page: &mut Page, case: &Case) {
    let last = case.input.last_day;
    let start = day_in_words(case.filled_on, 0);
    let filled = TimeOfDay::of(case.input.filled_at);
    page.block(
        "Calendar",
        Tone::Plain,
        format!(
            "full on {start} at {filled}; ends with {}",
            day_in_words(case.filled_on, last)
        ),
    );
    for (name, events) in by_entry(case) {
        page.line(Tone::Plain, format!("{name}: {}", happenings(&events)));
    }
    for step in &case.switches {
        page.line(Tone::Plain, format!("{} from day {}", step.what, step.day));
    }
    let away: Vec<String> = case
        .away
        .iter()
        .map(|(first, last)| format!("{first} to {last}"))
        .collect();
    if !away.is_empty() {
        page.line(Tone::Plain, format!("away on days {}", list(&away)));
    }
    for (day, entry) in &case.left_out {
        page.line(Tone::Plain, format!("left out on day {day}: {entry}"));
    }
}

/// Events of the run grouped by entry, in the order of their first day.
fn by_entry(case: &Case) -> Vec<(&str, Vec<&Event>)> {
    let end = case.input.end_minute();
    let mut groups: Vec<(&str, Vec<&Event>)> = Vec::new();
    let mut events: Vec<&Event> = case
        .input
        .events
        .iter()
        .filter(|e| e.minute < end)
        .collect();
    events.sort_by_key(|event| event.minute);
    for event in events {
        match groups.iter_mut().find(|(name, _)| *name == event.name) {
            Some((_, group)) => group.push(event),
            None => groups.push((&event.name, vec![event])),
        }
    }
    groups
}

fn happenings(events: &[&Event]) -> String {
    let mut days: Vec<u32> = events.iter().map(|event| event.minute / DAY).collect();
    days.dedup();
    let noun = if days.len() == 1 { "day" } else { "days" };
    let what = match events.first().map(|event| &event.kind) {
        Some(EventKind::Change { share }) => format!(
            "{} of {} %",
            counted(events.len(), "change"),
            short(100.0 * share)
        ),
        Some(EventKind::Dose(_)) => counted(events.len(), "dose"),
        Some(EventKind::Stock(animals)) => {
            format!(
                "{} g of animals, {} g of feed a day",
                short(animals.mass_g),
                short(animals.feed_g_per_day)
            )
        }
        Some(EventKind::Plant { .. }) => "planted".into(),
        Some(EventKind::Seed { .. }) => "films brought in".into(),
        Some(EventKind::Trim { share, .. }) => percent("trimmed by", *share),
        Some(EventKind::Siphon { share }) => percent("detritus siphoned by", *share),
        Some(EventKind::Wipe { share }) => percent("algae wiped by", *share),
        Some(EventKind::CleanFilter { share }) => percent("filter cleaned, films lost", *share),
        Some(EventKind::Uneaten { feed_g, .. }) => {
            format!("{} g of feed left lying", short(*feed_g))
        }
        None => String::new(),
    };
    format!("{what} on {noun} {}", runs_of(&days))
}

fn percent(what: &str, share: f64) -> String {
    format!("{what} {} %", short(100.0 * share))
}

/// `1 to 7, 9, 11`: neighbouring days drawn together.
fn runs_of(days: &[u32]) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for &day in days {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == day => *last = day,
            _ => runs.push((day, day)),
        }
    }
    let words: Vec<String> = runs
        .iter()
        .map(|&(first, last)| match last - first {
            0 => first.to_string(),
            1 => format!("{first}, {last}"),
            _ => format!("{first} to {last}"),
        })
        .collect();
    words.join(", ")
}

fn values(page: &mut Page, case: &Case) {
    let widest = |of: fn(&Resolved) -> usize| case.resolved.iter().map(of).max().unwrap_or(0);
    let paths = widest(|value| value.path.chars().count()).min(34);
    let values = widest(|value| value.value.chars().count()).min(24);
    for (at, value) in case.resolved.iter().enumerate() {
        let tone = if matches!(value.set_by, SetBy::Default(_)) {
            Tone::Faint
        } else {
            Tone::Plain
        };
        let label = if at == 0 { "Values" } else { "" };
        let row = format!(
            "{:paths$}  {:values$}  {}",
            value.path,
            value.value,
            set_by(&value.set_by)
        );
        page.block(label, tone, row);
    }
}

/// What set a value, in words.
fn set_by(set_by: &SetBy) -> String {
    match set_by {
        SetBy::Given => "given".into(),
        SetBy::Word(word) => format!("by {word}"),
        SetBy::Default(source) if source.is_empty() => "default".into(),
        SetBy::Default(source) => format!("default: {source}"),
        SetBy::Override(why) => format!("override: {why}"),
        SetBy::WorkedOut(from) => format!("worked out: {from}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use anstream::adapter::strip_str;

    #[test]
    fn a_scenario_is_printed_as_understood() {
        let text = page(&Example::default().case()).render(100);
        insta::assert_snapshot!(strip_str(&text).to_string());
    }

    #[test]
    fn neighbouring_days_are_drawn_together() {
        assert_eq!(runs_of(&[1, 2, 3, 5, 7, 8]), "1 to 3, 5, 7, 8");
    }
}
