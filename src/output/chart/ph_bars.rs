//! pH as one upright bar a day.

use crate::analysis::charted::PH;
use crate::analysis::milestones::{DayFigures, Extreme};

use super::Story;
use super::axis::about;
use super::bands::heights;
use super::ends::{EndName, name_ends};
use super::figure::Bar;
use super::sheet::Sheet;
use super::style::{INK, MUTED, Pen};
use super::weekly::Weekly;
use super::words::number;

/// One upright bar a day from the lowest to the highest pH.
pub fn ph_bars(
    story: &Story<'_>,
    weekly: &Weekly<'_>,
    sheet: &mut Sheet,
    (top, bottom): (f64, f64),
    (title, unit): (&str, &str),
) -> usize {
    let all: Vec<&DayFigures> = story.days().collect();
    let bands = story.bands_of_bars(PH, "pH", MUTED);
    let low = all
        .iter()
        .map(|d| d.ph_low.value)
        .chain(heights(&bands))
        .fold(7.0, f64::min);
    let high = all
        .iter()
        .map(|d| d.ph_high.value)
        .chain(heights(&bands))
        .fold(low, f64::max);
    let mut panel = weekly.panel(top, bottom, about(low, high, 4));
    panel.areas = bands;
    let room = panel.frame.width() / f64::from(weekly.end);
    panel.bars = all
        .iter()
        .map(|d| Bar {
            at: f64::from(d.day) + 0.5,
            low: d.ph_low.value,
            high: d.ph_high.value,
            colour: INK,
            width: (0.4 * room).clamp(1.6, 3.4),
        })
        .collect();
    let at = sheet.panel(panel, title, unit, 14.0);
    if let Some(day) = all.last() {
        let pen = Pen::curve(INK);
        let name = |words, extreme: Extreme| {
            EndName::curve(words, number(extreme.value, 1), extreme.value, pen)
        };
        let names = [
            name("highest pH", day.ph_high),
            name("lowest pH", day.ph_low),
        ];
        name_ends(sheet, at, &names);
    }
    at
}
