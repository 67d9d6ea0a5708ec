//! What lies along the panels of a lesson: weeks or hours, water changes, the dark.

use crate::analysis::lesson::taught::Taught;
use crate::base::clock::{DAY, days};
use crate::output::chart::axis::{Axis, Scale, Tick};
use crate::output::chart::figure::{Anchor, Field, Panel, Upright};
use crate::output::chart::key::Key;
use crate::output::chart::series::dark;
use crate::output::chart::sheet::{LEFT, Sheet, bold, plain};
use crate::output::chart::signs::change_mark;
use crate::output::chart::style::{DUSK, INK, MUTED, Pen};

/// Days and parts of a day between two named ticks.
const WEEK: u32 = 7;
const PARTS_OF_A_DAY: u32 = 4;

/// The time along the panels.
#[derive(Clone, Copy)]
pub struct Foot<'a> {
    taught: &'a Taught<'a>,
    step: usize,
}

impl<'a> Foot<'a> {
    /// The time along the panels of a step.
    pub fn of(taught: &'a Taught<'a>, step: usize) -> Foot<'a> {
        Foot { taught, step }
    }
    fn ends(&self) -> (u32, u32) {
        let window = self.taught.lesson.window;
        (window.first_day, window.last_day + 1)
    }
    fn is_by_the_hour(&self) -> bool {
        self.taught.lesson.window.is_by_the_hour()
    }
    fn is_by_the_day(&self) -> bool {
        let (first, end) = self.ends();
        end - first <= 2 * WEEK
    }
    /// From left to right.
    pub fn axis(&self) -> Axis {
        let (first, end) = self.ends();
        let ticks = match (self.is_by_the_hour(), self.is_by_the_day()) {
            (true, _) => (0..=(end - first) * PARTS_OF_A_DAY)
                .map(|part| Tick {
                    value: f64::from(first) + f64::from(part) / f64::from(PARTS_OF_A_DAY),
                    words: format!("{:02}:00", part % PARTS_OF_A_DAY * 24 / PARTS_OF_A_DAY),
                })
                .collect(),
            (_, by_the_day) => (first..=end)
                .step_by(if by_the_day { 1 } else { WEEK as usize })
                .map(|day| Tick {
                    value: f64::from(day),
                    words: day.to_string(),
                })
                .collect(),
        };
        Axis {
            low: f64::from(first),
            high: f64::from(end),
            scale: Scale::Even,
            ticks,
        }
    }
    /// When water is changed, days.
    pub fn changes(&self) -> Vec<f64> {
        let (first, end) = self.ends();
        let records = self.taught.steps[self.step].outcome.run.events.iter();
        let drawn =
            records.filter(|r| r.litres > 0.0 && (first * DAY..end * DAY).contains(&r.minute));
        drawn.map(|record| days(record.minute)).collect()
    }
    /// When it is dark, from and to in days; nothing where whole weeks are drawn.
    pub fn dark(&self) -> Vec<(f64, f64)> {
        let (first, end) = self.ends();
        if !self.is_by_the_hour() {
            return Vec::new();
        }
        let run = &self.taught.steps[self.step].outcome.run;
        let of_day = |day: u32| {
            let stretches = dark(run, day).into_iter();
            stretches.map(move |(from, to)| (days(day * DAY + from), days(day * DAY + to)))
        };
        (first..end).flat_map(of_day).collect()
    }
    /// What has to be explained of it.
    pub fn keys(&self) -> Vec<Key> {
        let mut keys = Vec::new();
        if !self.changes().is_empty() {
            keys.push(Key::Change);
        }
        if !self.dark().is_empty() {
            keys.push(Key::Dark(DUSK));
        }
        keys
    }
    /// The dark as pale fields, changes as fine lines.
    pub fn shade(&self, panel: &mut Panel) {
        panel.fields = (self.dark().into_iter())
            .map(|across| Field {
                across,
                up: (panel.up.low, panel.up.high),
                colour: DUSK,
                alpha: 1.0,
            })
            .collect();
        let upright = |at| Upright {
            at,
            pen: Pen::CHANGE,
        };
        panel.uprights = self.changes().into_iter().map(upright).collect();
    }
    /// Triangles on the frame, one per change.
    pub fn mark_changes(&self, sheet: &mut Sheet, panel: usize) {
        for at in self.changes() {
            let this = &sheet.figure.panels[panel];
            let place = (this.x(at), this.frame.top);
            sheet.shape(change_mark(place));
        }
    }
    /// Ticks under a panel; the names of days and weeks under the last one.
    pub fn write(&self, sheet: &mut Sheet, panel: usize, is_last: bool) {
        let bottom = sheet.figure.panels[panel].frame.bottom;
        let axis = self.axis();
        if !is_last {
            return;
        }
        sheet.ticks_below(panel, &axis);
        let (first, end) = self.ends();
        let middle = |from: f64, to: f64| {
            let this = &sheet.figure.panels[panel];
            (this.x(from) + this.x(to)) / 2.0
        };
        let names: Vec<(f64, String)> = if self.is_by_the_hour() {
            let day = |day: u32| {
                (
                    middle(f64::from(day), f64::from(day + 1)),
                    format!("day {day}"),
                )
            };
            (first..end).map(day).collect()
        } else if self.is_by_the_day() {
            Vec::new()
        } else {
            let week = |day: u32| {
                (
                    middle(f64::from(day), f64::from(day + WEEK)),
                    format!("week {}", day / WEEK + 1),
                )
            };
            let whole = (first..end)
                .step_by(WEEK as usize)
                .filter(|day| day + WEEK <= end);
            whole.map(week).collect()
        };
        let below = if self.is_by_the_hour() { 42.0 } else { 22.0 };
        for (x, words) in names {
            sheet.say_clear(vec![bold(&words, INK)], Anchor::Middle, x, bottom + below);
        }
        if !self.is_by_the_hour() {
            sheet.say(
                vec![plain("day", MUTED)],
                Anchor::End,
                LEFT - 8.0,
                bottom + 22.0,
            );
        }
    }
}
