//! When tanks are ready: steps of how many of 100 by each day, what the last day waited for, and what tests
//! should read on the way.

use crate::analysis::ensemble::curve::ReadyCurve;
use crate::analysis::forecast::Forecast;

use super::Story;
use super::ends::{EndName, name_ends};
use super::figure::{Anchor, Figure, Form, Limit, Line};
use super::labels::spread;
use super::power_cuts::{cut_lines, name_cuts};
use super::ready_cells::cells;
use super::ready_steps::{draw_steps, of_100};
use super::ready_tests::table;
use super::ready_words::{note, sentences, titles};
use super::sheet::{LEFT, Sheet, bold, plain};
use super::style::{INK, MUTED, Pen, READY};
use super::weekly::Weekly;
use super::weeks_forecast_words::ever;

/// The shares whose days are told, of 100.
const TOLD: [usize; 3] = [10, 50, 90];
/// Base line of the note under everything.
const NOTE: f64 = 856.0;
/// Least distance of two names of two lines in the margin, pixels.
const TWO_LINES: f64 = 36.0;

/// The chart.
pub fn figure(story: &Story<'_>, forecast: &Forecast) -> Figure {
    let curve = &forecast.curve;
    let mut sheet = Sheet::new("ready", &titles(story, curve), &sentences(story, curve));
    by_day(story, &mut sheet, curve);
    cells(&mut sheet, forecast);
    table(story, &mut sheet, forecast);
    let words = vec![plain(&note(curve), MUTED)];
    sheet.say(words, Anchor::Start, LEFT, NOTE);
    sheet.figure
}

fn by_day(story: &Story<'_>, sheet: &mut Sheet, curve: &ReadyCurve) {
    let weekly = Weekly::usual(story);
    let mut panel = weekly.panel(132.0, 466.0, of_100(4));
    draw_steps(&mut panel, curve);
    panel.uprights = cut_lines(story).collect();
    for share in TOLD {
        let (from, end) = weekly.across();
        let height = share as f64;
        let until = curve.day_of(share).map_or(end, f64::from);
        let pen = Pen::reference(INK);
        panel
            .limits
            .push(Limit::new("share", height, (from, until), pen));
        if curve.day_of(share).is_some() {
            let points = vec![(until, 0.0), (until, height)];
            let name = format!("day of {share} of 100");
            panel.lines.push(Line::new(&name, points, Pen::hair(INK)));
        }
    }
    let at = sheet.panel(
        panel,
        "Tanks that are ready",
        "of 100 plausible ones like yours",
        14.0,
    );
    for share in TOLD {
        name_share(story, sheet, at, curve, share);
    }
    name_cuts(story, sheet, at);
    weekly.name_absences(sheet, at);
    name_margin(sheet, at, curve);
    weekly.foot(sheet, at);
}

/// A disc with words where so many of 100 are ready.
fn name_share(story: &Story<'_>, sheet: &mut Sheet, at: usize, curve: &ReadyCurve, share: usize) {
    let Some(day) = curve.day_of(share) else {
        return;
    };
    let place = (f64::from(day), share as f64);
    sheet.mark(at, place, Form::Disc, INK);
    let when = format!("by {}", story.calendar().day(day));
    let words = vec![bold(&format!("{share} of 100"), INK), plain(&when, INK)];
    sheet.words_before(at, place, words);
}

/// What is ready at the end, and the shares that are not reached.
fn name_margin(sheet: &mut Sheet, at: usize, curve: &ReadyCurve) {
    let panel = &sheet.figure.panels[at];
    let (x, top, bottom) = (
        panel.frame.right + 12.0,
        panel.frame.top,
        panel.frame.bottom,
    );
    let later = format!("later than day {}", curve.last_day);
    let mut names = vec![(
        curve.of_100_by(curve.last_day),
        vec![bold(&format!("{} ready", ever(curve).reached()), READY)],
        vec![],
    )];
    let late = TOLD
        .into_iter()
        .filter(|share| curve.day_of(*share).is_none());
    names.extend(late.map(|share| {
        let words = vec![bold(&format!("{share} of 100"), INK)];
        (share as f64, words, vec![plain(&later, INK)])
    }));
    let wanted: Vec<f64> = names.iter().map(|name| panel.y(name.0)).collect();
    let placed = spread(&wanted, TWO_LINES, top, bottom);
    for ((_, first, second), y) in names.into_iter().zip(placed) {
        if second.is_empty() {
            sheet.say(first, Anchor::Start, x, y + 4.5);
        } else {
            sheet.say(first, Anchor::Start, x, y - 3.5);
            sheet.say(second, Anchor::Start, x, y + 13.5);
        }
    }
}

/// The last panel of the weeks: the same steps, with the day of 50 of 100.
pub fn ready_by_day(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet, curve: &ReadyCurve) {
    let mut panel = weekly.panel_with_changes(742.0, 826.0, of_100(2));
    draw_steps(&mut panel, curve);
    panel.uprights = cut_lines(story).collect();
    let at = sheet.panel(
        panel,
        "Tanks that are ready",
        "of 100 plausible ones like yours",
        14.0,
    );
    name_share(story, sheet, at, curve, 50);
    let end = curve.of_100_by(curve.last_day);
    let value = ever(curve).reached_words();
    let names = [EndName::curve("ready", value, end, Pen::curve(READY))];
    name_ends(sheet, at, &names);
    weekly.foot(sheet, at);
}
