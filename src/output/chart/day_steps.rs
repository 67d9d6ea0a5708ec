//! What was done on a day, as marks on the frame of its first panel.

use crate::base::clock::DAY;
use crate::engine::event::EventKind;

use super::day::Day;
use super::figure::{Anchor, width_of};
use super::sheet::{LEFT, RIGHT, Sheet, small};
use super::signs::{change_mark, step_mark};
use super::style::{CHANGE, INK};
use super::words::number;

/// Something that was done on the day.
pub struct Done {
    /// When.
    pub minute: u32,
    /// What.
    pub words: String,
    /// Whether water was changed.
    pub is_change: bool,
}

impl Day<'_> {
    /// What was done, one entry per minute.
    pub fn steps(&self) -> Vec<Done> {
        let of_today = |minute: u32| minute / DAY == self.day;
        let events = self.story.run.input.events.iter();
        let mut found: Vec<(u32, u8, String)> = events
            .filter(|e| of_today(e.minute))
            .map(|e| (e.minute, e.kind.rank(), event_words(&e.kind)))
            .collect();
        for cut in &self.story.run.input.power_cuts {
            let ends = [(cut.from, "power fails"), (cut.until, "power back")];
            let today = ends.into_iter().filter(|(minute, _)| of_today(*minute));
            // after everything that is done at the same minute
            found.extend(today.map(|(minute, words)| (minute, u8::MAX, words.to_string())));
        }
        found.sort();
        found.dedup();
        let mut steps: Vec<Done> = Vec::new();
        for (minute, _, words) in found {
            let is_change = words.ends_with("water change");
            match steps.last_mut() {
                Some(last) if last.minute == minute => {
                    last.words += &format!(", {words}");
                    last.is_change |= is_change;
                }
                _ => steps.push(Done {
                    minute,
                    words,
                    is_change,
                }),
            }
        }
        steps
    }
    /// Marks on the upper frame with what was done, each in the lowest row with room.
    pub fn name_steps(&self, sheet: &mut Sheet, at: usize) {
        for step in self.steps() {
            let this = &sheet.figure.panels[at];
            let (x, top) = (this.x(self.hour(step.minute)), this.frame.top);
            sheet.shape(if step.is_change {
                change_mark((x, top))
            } else {
                step_mark((x, top - 5.0))
            });
            let words = format!("{} {}", step.words, self.time(step.minute));
            let spans = vec![small(&words, if step.is_change { CHANGE } else { INK })];
            let half = width_of(&spans) / 2.0;
            let middle = x.clamp(LEFT + half, RIGHT + 100.0 - half);
            let rows = [top - 14.0, top - 31.0];
            let said = rows
                .into_iter()
                .any(|row| sheet.say_clear(spans.clone(), Anchor::Middle, middle, row));
            if !said {
                sheet.leave_out(&spans);
            }
        }
    }
}

/// What an event is called on the chart of its day.
fn event_words(kind: &EventKind) -> String {
    match kind {
        EventKind::Change { share } => {
            format!("{} % water change", number(100.0 * share, 0))
        }
        EventKind::Trim { .. } => "trim".into(),
        EventKind::Siphon { .. } => "siphon".into(),
        EventKind::Wipe { .. } => "wipe".into(),
        EventKind::CleanFilter { .. } => "filter cleaned".into(),
        EventKind::Dose(_) => "dose".into(),
        EventKind::Seed { .. } => "seeded".into(),
        EventKind::Plant { .. } => "planted".into(),
        EventKind::Stock(animals) if animals.shrimp => "shrimp in".into(),
        EventKind::Stock(_) => "fish in".into(),
        EventKind::Uneaten { .. } => "feed left over".into(),
    }
}
