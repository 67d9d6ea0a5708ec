//! What every small panel has beside its curves: absences, changes, names of heights and days.

use crate::analysis::compare::strategy::Strategy;
use crate::base::clock::days;
use crate::output::chart::axis::Axis;
use crate::output::chart::figure::{Anchor, Field, Panel};
use crate::output::chart::sheet::{Sheet, small};
use crate::output::chart::signs::small_change_mark;
use crate::output::chart::style::{AWAY, MUTED, TICK};

/// From a frame to the names beside it, and down to those below it.
const BESIDE: f64 = 9.0;
const BELOW: f64 = 22.0;
/// From the middle of a name down to its base line.
pub const TO_MIDDLE: f64 = 4.5;

/// Shades the days away.
pub fn shade_absences(panel: &mut Panel, strategy: &Strategy<'_>) {
    for &(from, through) in &strategy.case.away {
        let until = f64::from(through + 1).min(panel.across.high);
        if f64::from(from) < until {
            panel.fields.push(Field {
                across: (f64::from(from), until),
                up: (panel.up.low, panel.up.high),
                colour: AWAY,
                alpha: 1.0,
            });
        }
    }
}

/// A small triangle per water change.
pub fn mark_changes(sheet: &mut Sheet, panel: &Panel, strategy: &Strategy<'_>) {
    let end = strategy.case.input.end_minute();
    let records = strategy.outcome.run.events.iter();
    for record in records.filter(|r| r.litres > 0.0 && r.minute < end) {
        let place = (panel.x(days(record.minute)), panel.frame.top);
        sheet.shape(small_change_mark(place));
    }
}

/// The names of heights left of a panel.
pub fn name_heights(sheet: &mut Sheet, panel: &Panel) {
    let ends = |up: &Axis| up.ticks.len().saturating_sub(1);
    for (place, tick) in panel.up.ticks.iter().enumerate() {
        // in a low panel only the ends have room for their names
        let is_end = place == 0 || place == ends(&panel.up);
        let step = panel.frame.height() / ends(&panel.up).max(1) as f64;
        if is_end || step > 2.0 * TICK {
            let words = vec![small(&tick.words, MUTED)];
            let (x, y) = (panel.frame.left - BESIDE, panel.y(tick.value) + TO_MIDDLE);
            sheet.say(words, Anchor::End, x, y);
        }
    }
}

/// The names of the days under the panel that was drawn last.
pub fn name_days(sheet: &mut Sheet) {
    let Some(panel) = sheet.figure.panels.last() else {
        return;
    };
    let (frame, axis) = (panel.frame, panel.across.clone());
    let at = sheet.figure.panels.len() - 1;
    sheet.ticks_below(at, &axis);
    let words = vec![small("day", MUTED)];
    sheet.say(
        words,
        Anchor::End,
        frame.left - BESIDE,
        frame.bottom + BELOW,
    );
}
