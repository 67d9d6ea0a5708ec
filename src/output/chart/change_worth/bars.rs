//! A bar per change on its day, the range of the tanks over it, and words beside the tallest.

use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::effects::Effects;
use crate::base::clock::days;
use crate::output::change_worth::words::few_move;
use crate::output::chart::axis;
use crate::output::chart::figure::{Anchor, Limit, Line, Panel, Shape, width_of};
use crate::output::chart::sheet::{Sheet, bold};
use crate::output::chart::style::{BASE, CHANGE, INK, Pen};
use crate::output::chart::weekly::Weekly;
use crate::output::chart::words::signed;

/// Widest bar, and the narrowest, pixels; between them a share of the room of a day.
const WIDEST: f64 = 10.0;
const NARROWEST: f64 = 2.0;
const OF_A_DAY: f64 = 0.6;
/// From the title of a panel to its frame, pixels.
const ABOVE: f64 = 14.0;
/// Steps of an axis.
const STEPS: usize = 4;
/// How much the bar of a change that stays covers, and of one that may go.
const STAYS: f64 = 0.85;
const GOES: f64 = 0.4;
/// Half the width of the ends of a range, pixels.
const END: f64 = 3.5;
/// How far an axis reaches past the tallest bar, so that words stand above it.
const ROOM: f64 = 1.4;
/// From a bar to words above it, pixels.
const GAP: f64 = 7.0;

/// What one panel shows of each change.
pub struct Series {
    /// Title of the panel.
    pub title: &'static str,
    /// What its numbers are.
    pub unit: String,
    /// Reads it off.
    pub read: Box<dyn Fn(&Effects) -> f64>,
    /// Whether the range of the ready days stands over each bar.
    pub range: bool,
    /// Digits after the point of the words beside the tallest bar.
    pub digits: usize,
    /// A tallest bar lower than this is not told.
    pub told_from: f64,
    /// The axis is no shorter.
    pub least: f64,
}

/// Draws a panel between two heights; its place among the panels of the sheet.
pub fn draw(
    sheet: &mut Sheet,
    weekly: &Weekly<'_>,
    worth: &ChangeWorth,
    series: &Series,
    (top, bottom): (f64, f64),
) -> usize {
    let values = worth.alone.iter().map(|effects| (series.read)(effects));
    let ranges = worth.alone.iter().filter(|_| series.range);
    let all = values.chain(ranges.flat_map(range));
    let (low, high) = all.fold((0.0_f64, series.least / ROOM), |(low, high), value| {
        (low.min(value), high.max(value))
    });
    let up = axis::from_zero([low, ROOM * high], series.least, STEPS);
    let mut panel = weekly.panel(top, bottom, up);
    if panel.up.low < 0.0 {
        let zero = Limit::new("no change", 0.0, weekly.across(), Pen::hair(BASE));
        panel.limits.push(zero);
    }
    let width = (OF_A_DAY * (panel.x(1.0) - panel.x(0.0))).clamp(NARROWEST, WIDEST);
    bars(&mut panel, worth, series, width);
    let panel = sheet.panel(panel, series.title, &series.unit, ABOVE);
    if series.range {
        ranges_over(sheet, panel, worth);
    }
    say_tallest(sheet, panel, worth, series);
    panel
}

/// Days later below which 10 of 100 tanks stay, and 90.
fn range(effects: &Effects) -> [f64; 2] {
    let [low, high] = effects.ready.range_days;
    [0.0 - high, 0.0 - low]
}

fn at(worth: &ChangeWorth, place: usize) -> f64 {
    days(worth.changes[place].minute)
}

fn bars(panel: &mut Panel, worth: &ChangeWorth, series: &Series, width: f64) {
    for (place, effects) in worth.alone.iter().enumerate() {
        let alpha = match worth.drop.drops(place) {
            true => GOES,
            false => STAYS,
        };
        let pen = Pen {
            alpha,
            ..Pen::hair(CHANGE).wide(width)
        };
        let x = at(worth, place);
        let ends = vec![(x, 0.0), (x, (series.read)(effects))];
        panel.lines.push(Line::new(&series.unit, ends, pen));
    }
}

/// A fine upright from 10 to 90 of 100 tanks with short ends, where they differ.
fn ranges_over(sheet: &mut Sheet, panel: usize, worth: &ChangeWorth) {
    for (place, effects) in worth.alone.iter().enumerate() {
        let [low, high] = range(effects);
        if high <= low {
            continue;
        }
        let x = at(worth, place);
        let this = &mut sheet.figure.panels[panel];
        let ends = vec![(x, low), (x, high)];
        let pen = Pen::hair(INK);
        this.lines.push(Line::new("10 to 90 of 100", ends, pen));
        let x = this.x(x);
        for y in [low, high].map(|days| this.y(days).floor() + 0.5) {
            sheet.shape(Shape::Path(vec![(x - END, y), (x + END, y)], pen));
        }
    }
}

/// `+0.8, day 29` beside the tallest bar.
fn say_tallest(sheet: &mut Sheet, panel: usize, worth: &ChangeWorth, series: &Series) {
    let values = worth.alone.iter().map(|effects| (series.read)(effects));
    let tallest = values.enumerate().max_by(|a, b| a.1.total_cmp(&b.1));
    let Some((place, value)) = tallest.filter(|(_, value)| *value >= series.told_from) else {
        return;
    };
    let day = worth.changes[place].day();
    let few = few_move(&worth.alone[place].ready).filter(|_| series.range);
    let few = few.map_or(String::new(), |few| format!(": {few}"));
    let words = format!("{}, day {day}{few}", signed(value, series.digits));
    let words = vec![bold(&words, INK)];
    let this = &sheet.figure.panels[panel];
    let [_, high] = range(&worth.alone[place]);
    let top = if series.range { value.max(high) } else { value };
    // no bar is taller, so there is room above it
    let (x, y) = this.at((at(worth, place), top));
    let half = width_of(&words) / 2.0 + END;
    let x = x.clamp(this.frame.left + half, this.frame.right - half);
    if !(series.range && tops_between(this, worth, [x - half, x + half], top)) {
        return sheet.say(words, Anchor::Middle, x, y - GAP);
    }
    sheet.words_at(panel, (at(worth, place), value), words);
}

/// Whether the range of a change between two places of the page reaches higher than that.
fn tops_between(panel: &Panel, worth: &ChangeWorth, [from, to]: [f64; 2], top: f64) -> bool {
    let mut all = worth.alone.iter().enumerate();
    all.any(|(place, effects)| {
        let x = panel.x(at(worth, place));
        (from..=to).contains(&x) && range(effects)[1] > top
    })
}
