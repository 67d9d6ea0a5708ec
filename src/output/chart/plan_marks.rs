//! The steps of the plan that are not water changes, as diamonds with words above a panel.

use crate::base::clock::days;
use crate::engine::event::EventKind;

use super::figure::{Anchor, width_of};
use super::key::Key;
use super::sheet::{Sheet, small};
use super::signs::step_mark;
use super::style::INK;
use super::weekly::Weekly;

/// A step of the plan that is not a water change.
#[derive(Debug, Clone, PartialEq)]
struct Step {
    at: f64,
    words: String,
}

/// `light.steps.brighter` becomes `light: brighter`; `light` stays.
fn switch_words(path: &str) -> String {
    let mut parts = path.split('.');
    let first = parts.next().unwrap_or_default();
    match parts.next_back() {
        Some(last) => format!("{first}: {last}"),
        None => format!("{first} changes"),
    }
}

/// Runs of steps so close that the words of one would touch the next.
fn grouped(steps: &[Step], places: &[f64]) -> Vec<std::ops::Range<usize>> {
    let mut groups: Vec<std::ops::Range<usize>> = Vec::new();
    for (n, &x) in places.iter().enumerate() {
        let fits = groups.last().is_some_and(|group| {
            let words = vec![small(&joined(&steps[group.clone()], false), INK)];
            places[group.end - 1] + 20.0 + width_of(&words) <= x
        });
        match groups.last_mut() {
            Some(group) if !fits => group.end = n + 1,
            _ => groups.push(n..n + 1),
        }
    }
    groups
}

/// `planted, seeded on day 1`: words of one group, with or without the days.
fn joined(steps: &[Step], with_days: bool) -> String {
    let mut told: Vec<(f64, Vec<&str>)> = Vec::new();
    for step in steps {
        let day = step.at.floor();
        if told
            .iter()
            .any(|(_, words)| words.contains(&step.words.as_str()))
        {
            continue;
        }
        match told.last_mut() {
            Some((same, words)) if *same == day => words.push(&step.words),
            _ => told.push((day, vec![&step.words])),
        }
    }
    let says_days = with_days && steps.len() > 1;
    let parts: Vec<String> = told
        .iter()
        .map(|(day, words)| match words.join(", ") {
            words if says_days && *day > 0.0 => format!("{words} on day {day}"),
            words => words,
        })
        .collect();
    parts.join(", ")
}

impl Weekly<'_> {
    /// The key entries of what is marked above a panel.
    pub fn keys(&self) -> Vec<Key> {
        let mut keys = Vec::new();
        if !self.changes().is_empty() {
            keys.push(Key::Change);
        }
        if !self.steps().is_empty() {
            keys.push(Key::Step);
        }
        keys
    }
    fn steps(&self) -> Vec<Step> {
        let end = self.story.run.input.end_minute();
        let mut steps: Vec<Step> = Vec::new();
        for event in &self.story.run.input.events {
            let words = match &event.kind {
                EventKind::Plant { .. } => "planted",
                EventKind::Seed { .. } => "seeded",
                EventKind::Trim { .. } => "trimmed",
                EventKind::Stock(animals) if animals.shrimp => "shrimp in",
                EventKind::Stock(_) => "fish in",
                _ => continue,
            };
            if event.minute < end {
                steps.push(Step {
                    at: days(event.minute),
                    words: words.to_string(),
                });
            }
        }
        let switches = self.story.case.switches.iter();
        steps.extend(
            switches
                .filter(|s| s.day > 0 && s.day < self.end)
                .map(|s| Step {
                    at: f64::from(s.day),
                    words: switch_words(&s.name),
                }),
        );
        let cuts = self.story.run.input.power_cuts.iter();
        steps.extend(cuts.filter(|cut| cut.from < end).map(|cut| Step {
            at: days(cut.from),
            words: "power cut".to_string(),
        }));
        steps.sort_by(|a, b| a.at.total_cmp(&b.at));
        steps.dedup();
        steps
    }
    /// Ink diamonds in a row above a panel, with words where there is room: neighbours that stand
    /// too close for words of their own share one text.
    pub fn mark_steps(&self, sheet: &mut Sheet, panel: usize) {
        let (top, left, right) = {
            let frame = sheet.figure.panels[panel].frame;
            (frame.top, frame.left, frame.right)
        };
        let steps = self.steps();
        let places: Vec<f64> = steps
            .iter()
            .map(|s| sheet.figure.panels[panel].x(s.at))
            .collect();
        for &x in &places {
            sheet.shape(step_mark((x, top - 17.0)));
        }
        for group in grouped(&steps, &places) {
            let (start, end) = (places[group.start], places[group.end - 1]);
            let next = places.get(group.end).map_or(right + 140.0, |x| x - 10.0);
            let before = places[..group.start].last().map_or(left, |x| x + 10.0);
            let said = [true, false].into_iter().any(|with_days| {
                let words = vec![small(&joined(&steps[group.clone()], with_days), INK)];
                let width = width_of(&words);
                if end + 10.0 + width <= next {
                    sheet.say_clear(words, Anchor::Start, end + 10.0, top - 12.5)
                } else if start - 10.0 - width >= before {
                    sheet.say_clear(words, Anchor::End, start - 10.0, top - 12.5)
                } else {
                    false
                }
            });
            if !said {
                sheet.leave_out(&[small(&joined(&steps[group], true), INK)]);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(at: f64, words: &str) -> Step {
        Step {
            at,
            words: words.to_string(),
        }
    }

    #[test]
    fn each_day_of_a_group_is_said_once() {
        let steps = [
            step(0.4, "planted"),
            step(28.0, "light changes"),
            step(28.4, "fish in"),
        ];
        assert_eq!(
            joined(&steps, true),
            "planted, light changes, fish in on day 28"
        );
        assert_eq!(joined(&steps[..1], true), "planted");
    }

    #[test]
    fn a_dotted_path_becomes_words() {
        assert_eq!(switch_words("light.steps.brighter"), "light: brighter");
        assert_eq!(switch_words("gas"), "gas changes");
    }
}
