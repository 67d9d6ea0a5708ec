//! Which ripening limits each day keeps: one row of cells per limit, one cell per day.

use crate::analysis::ready::Ready;
use crate::engine::result::Reading;

use super::Story;
use super::axis::{Axis, Scale};
use super::figure::{Anchor, Panel, Shape};
use super::rect::Rect;
use super::series::of_day;
use super::sheet::{Sheet, bold, plain};
use super::signs::cell;
use super::style::{AMMONIA, Colour, INK, MUTED, NITRITE, Pen};
use super::weekly::Weekly;
use super::weeks::nitrite_limit;
use super::words::{short, trimmed};

/// One row of cells per ripening limit, one cell per day.
pub fn strip(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let rows = rows(story);
    let up = Axis {
        low: rows.len() as f64,
        high: 0.0,
        scale: Scale::Even,
        ticks: Vec::new(),
    };
    let panel = weekly.panel(742.0, 826.0, up);
    let at = sheet.panel(panel, "Ripening limits, day by day", "", 14.0);
    for (n, row) in rows.iter().enumerate() {
        for day in 0..weekly.end {
            let held = row.held(story, day);
            let space = cell_space(&sheet.figure.panels[at], day, n);
            for shape in cell(&space, row.colour, held) {
                sheet.shape(shape);
            }
        }
        let this = &sheet.figure.panels[at];
        let (right, y) = (this.frame.right, this.y(n as f64 + 0.5));
        let spans = vec![bold(row.name, INK), plain(&row.bound, MUTED)];
        sheet.say(spans, Anchor::Start, right + 12.0, y + 4.5);
    }
    name_ready(story, sheet, at);
    weekly.foot(sheet, at);
}

fn cell_space(panel: &Panel, day: u32, row: usize) -> Rect {
    let (left, right) = (panel.x(f64::from(day)), panel.x(f64::from(day) + 1.0));
    let (top, bottom) = (panel.y(row as f64), panel.y(row as f64 + 1.0));
    Rect::new(left + 0.9, top + 3.0, right - 0.9, bottom - 3.0)
}

/// The words about the ready day above the strip, with a fine line through it.
fn name_ready(story: &Story<'_>, sheet: &mut Sheet, at: usize) {
    let calendar = story.calendar();
    let (words, day) = match &story.verdict.ready {
        Ready::Day(day) => (format!("ready, {}", calendar.day(*day)), Some(*day)),
        Ready::QuietNotRipe { day, .. } => (
            format!("quiet, {}, not shown to be ripe", calendar.day(*day)),
            Some(*day),
        ),
        Ready::LaterThan(day) => (format!("ready later than day {day}"), None),
    };
    let this = &sheet.figure.panels[at];
    let (top, bottom, right) = (this.frame.top, this.frame.bottom, this.frame.right);
    let spans = vec![bold(&words, INK)];
    let Some(x) = day.map(|d| this.x(f64::from(d))) else {
        sheet.say_clear(spans, Anchor::End, right, top - 12.0);
        return;
    };
    let said = sheet.say_clear(spans.clone(), Anchor::Start, x + 7.0, top - 8.0)
        || sheet.say_clear(spans.clone(), Anchor::End, x - 7.0, top - 8.0);
    if !said {
        sheet.say_clear(spans, Anchor::End, right, top - 12.0);
    }
    let above = if said { 18.0 } else { 2.0 };
    let ends = vec![(x, top - above), (x, bottom)];
    sheet.shape(Shape::Path(ends, Pen::hair(INK).wide(1.6)));
}

/// A row of the strip.
struct Row {
    name: &'static str,
    bound: String,
    colour: Colour,
    holds: fn(&Story<'_>, &Reading) -> bool,
}

impl Row {
    /// Whether every reading of a day holds the limit; a day without readings does not.
    fn held(&self, story: &Story<'_>, day: u32) -> bool {
        let readings = of_day(story.run, day);
        !readings.is_empty() && readings.iter().all(|r| (self.holds)(story, r))
    }
}

fn rows(story: &Story<'_>) -> [Row; 4] {
    let limits = &story.case.limits;
    let feed = story.verdict.feed_mg_n_per_day;
    [
        Row {
            name: "ammonia",
            bound: format!("≤ {}", trimmed(limits.total_ammonia.value)),
            colour: AMMONIA,
            holds: |s, r| r.tan_mg_n_per_l <= s.case.limits.total_ammonia.value,
        },
        Row {
            name: "nitrite",
            bound: format!("≤ {}", trimmed(nitrite_limit(story))),
            colour: NITRITE,
            holds: |s, r| r.nitrite_mg_n_per_l <= s.case.limits.nitrite_with(r.chloride_mg_per_l),
        },
        Row {
            name: "free NH₃",
            bound: format!("≤ {}", trimmed(limits.free_ammonia.value)),
            colour: AMMONIA,
            holds: |s, r| r.free_ammonia_mg_n_per_l <= s.case.limits.free_ammonia.value,
        },
        Row {
            name: "capacity",
            bound: format!("≥ {} mg N/d", short(feed)),
            colour: INK,
            holds: |s, r| {
                let step = r
                    .ammonia_capacity_mg_n_per_day
                    .min(r.nitrite_capacity_mg_n_per_day);
                step >= s.verdict.feed_mg_n_per_day
            },
        },
    ]
}
