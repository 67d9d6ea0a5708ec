//! What charts over the weeks share: the axis of days, weeks and dates, absences, water changes and
//! the other steps of the plan.

use crate::base::clock::days;

use super::Story;
use super::axis::{Axis, Scale, Tick};
use super::figure::{Anchor, Field, Panel, Shape, Upright, width_of};
use super::rect::Rect;
use super::sheet::{LEFT, RIGHT, Sheet, bold, plain, small};
use super::signs::change_mark;
use super::style::{AWAY, BASE, INK, MUTED, Pen};
use super::words::Calendar;

/// The days of a run as an axis, with all that happens on it.
#[derive(Debug)]
pub struct Weekly<'a> {
    /// The run.
    pub story: &'a Story<'a>,
    /// Closing midnight of the last day.
    pub end: u32,
    right: f64,
}

impl<'a> Weekly<'a> {
    /// The axis of a run; data ends at `right`.
    pub fn new(story: &'a Story<'a>, right: f64) -> Weekly<'a> {
        Weekly {
            story,
            end: story.run.input.last_day + 1,
            right,
        }
    }
    /// The common width.
    pub fn usual(story: &'a Story<'a>) -> Weekly<'a> {
        Weekly::new(story, RIGHT)
    }
    /// From and to of the axis.
    pub fn across(&self) -> (f64, f64) {
        (0.0, f64::from(self.end))
    }
    /// Days between two named days: a day, a week or two, as room allows.
    fn stride(&self) -> u32 {
        match self.end {
            0..=15 => 1,
            16..=90 => 7,
            91..=180 => 14,
            _ => 28,
        }
    }
    fn axis(&self) -> Axis {
        let ticks = (0..=self.end).step_by(self.stride() as usize);
        Axis {
            low: 0.0,
            high: f64::from(self.end),
            scale: Scale::Even,
            ticks: ticks
                .map(|day| Tick {
                    value: f64::from(day),
                    words: day.to_string(),
                })
                .collect(),
        }
    }
    /// A panel between two heights of the page, with absences shaded.
    pub fn panel(&self, top: f64, bottom: f64, up: Axis) -> Panel {
        let frame = Rect::new(LEFT, top, self.right, bottom);
        let mut panel = Panel::new(frame, self.axis(), up);
        for &(from, through) in &self.story.case.away {
            let until = (through + 1).min(self.end);
            if from < until {
                panel.fields.push(Field {
                    across: (f64::from(from), f64::from(until)),
                    up: (panel.up.low, panel.up.high),
                    colour: AWAY,
                    alpha: 1.0,
                });
            }
        }
        panel
    }
    /// The same with a fine line at each water change.
    pub fn panel_with_changes(&self, top: f64, bottom: f64, up: Axis) -> Panel {
        let mut panel = self.panel(top, bottom, up);
        panel.uprights = self
            .changes()
            .into_iter()
            .map(|at| Upright {
                at,
                pen: Pen::CHANGE,
            })
            .collect();
        panel
    }
    /// When water is changed, in days.
    pub fn changes(&self) -> Vec<f64> {
        let end = self.story.run.input.end_minute();
        let records = self.story.run.events.iter();
        records
            .filter(|r| r.litres > 0.0 && r.minute < end)
            .map(|r| days(r.minute))
            .collect()
    }
    /// Blue triangles on the upper frame of a panel, one per water change.
    pub fn mark_changes(&self, sheet: &mut Sheet, panel: usize) {
        for at in self.changes() {
            let this = &sheet.figure.panels[panel];
            let place = (this.x(at), this.frame.top);
            sheet.shape(change_mark(place));
        }
    }
    /// The word "away" in each shaded absence that has room for it.
    pub fn name_absences(&self, sheet: &mut Sheet, panel: usize) {
        for &(from, through) in &self.story.case.away {
            let this = &sheet.figure.panels[panel];
            let (left, right) = (f64::from(from), f64::from((through + 1).min(self.end)));
            if left >= right {
                continue;
            }
            let middle = this.x((left + right) / 2.0);
            let words = vec![small("away", MUTED)];
            let baseline = this.frame.top + 18.0;
            if width_of(&words) + 8.0 < this.x(right) - this.x(left) {
                sheet.say_if_free(panel, words, middle, baseline);
            }
        }
    }
    /// Days, weeks and dates under the last panel.
    pub fn foot(&self, sheet: &mut Sheet, panel: usize) {
        let bottom = sheet.figure.panels[panel].frame.bottom;
        let stride = self.stride();
        for day in 0..=self.end {
            let x = sheet.figure.panels[panel].x(f64::from(day)).floor() + 0.5;
            let long = if day % stride == 0 { 7.0 } else { 4.0 };
            if stride < 14 || day % 7 == 0 {
                let ends = vec![(x, bottom), (x, bottom + long)];
                sheet.shape(Shape::Path(ends, Pen::hair(BASE)));
            }
            if day % stride == 0 {
                self.name_day(sheet, day, x, bottom);
            }
            if stride == 7 && day % 7 == 0 && day + 7 <= self.end {
                let middle = sheet.figure.panels[panel].x(f64::from(day) + 3.5);
                let words = vec![bold(&format!("week {}", day / 7 + 1), INK)];
                sheet.say_clear(words, Anchor::Middle, middle, bottom + 22.0);
            }
        }
        let words = vec![plain("day", MUTED)];
        sheet.say(words, Anchor::End, LEFT - 8.0, bottom + 22.0);
    }
    fn name_day(&self, sheet: &mut Sheet, day: u32, x: f64, bottom: f64) {
        let words = vec![plain(&day.to_string(), MUTED)];
        sheet.say(words, Anchor::Middle, x, bottom + 22.0);
        let calendar: Calendar = self.story.calendar();
        if let Some(date) = calendar.short_date(day) {
            let words = vec![plain(&date, MUTED)];
            sheet.say_clear(words, Anchor::Middle, x, bottom + 40.0);
        }
    }
}
