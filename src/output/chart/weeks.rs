//! The eight weeks at a glance: ammonia, nitrite, nitrate, free ammonia, and which ripening limits
//! each day keeps.

use crate::analysis::charted::{self, FREE_AMMONIA, TAN};
use crate::analysis::ensemble::days::Of;
use crate::base::clock::days;

use super::Story;
use super::axis::from_zero;
use super::bands::heights;
use super::ends::{EndName, name_ends};
use super::figure::{Figure, Form, Limit, Line, Panel, Upright};
use super::key::Key;
use super::ready::ready_by_day;
use super::rect::Point;
use super::ripening::strip;
use super::series::{last, over_weeks};
use super::sheet::{Sheet, bold};
use super::style::{AMMONIA, INK, NITRATE, NITRITE, Pen};
use super::weekly::Weekly;
use super::weeks_words::{sentences, titles};
use super::words::{hundredths, short, trimmed};

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let mut sheet = Sheet::new("weeks", &titles(story), &sentences(story));
    let mut keys = story.curve_keys();
    keys.push(Key::Line(Pen::LIMIT, "limit"));
    keys.extend(weekly.keys());
    if story.forecast.is_none() {
        keys.push(Key::Cells("limit held all day", "not held"));
    }
    sheet.key(&keys);
    ammonia_and_nitrite(story, &weekly, &mut sheet);
    nitrate(story, &weekly, &mut sheet);
    free_ammonia(story, &weekly, &mut sheet);
    match story.forecast {
        Some(forecast) => ready_by_day(story, &weekly, &mut sheet, &forecast.curve),
        None => strip(story, &weekly, &mut sheet),
    }
    sheet.figure
}

fn ammonia_and_nitrite(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let ammonia = over_weeks(story.run, |r| r.tan_mg_n_per_l);
    let nitrite = over_weeks(story.run, |r| r.nitrite_mg_n_per_l);
    let bounds = [story.case.limits.total_ammonia.value, nitrite_limit(story)];
    let mut bands = story.bands_all_day(TAN, "total ammonia", AMMONIA);
    bands.extend(story.bands_all_day(charted::NITRITE, "nitrite", NITRITE));
    let all = ammonia.iter().chain(&nitrite).map(|p| p.1);
    let all = all.chain(bounds).chain(heights(&bands));
    let mut panel = weekly.panel_with_changes(182.0, 390.0, from_zero(all, 0.5, 5));
    panel.limits = bounds
        .map(|value| Limit::new("limit", value, weekly.across(), Pen::LIMIT))
        .into();
    panel.areas = bands;
    let pens = [Pen::curve(AMMONIA), Pen::dashed(NITRITE)];
    let ends = [last(&ammonia), last(&nitrite)];
    panel.lines = vec![
        Line::new("total ammonia", ammonia, pens[0]),
        Line::new("nitrite", nitrite, pens[1]),
    ];
    ready_line(story, &mut panel);
    let at = sheet.panel(panel, "Total ammonia and nitrite", "mg N/L", 36.0);
    weekly.mark_changes(sheet, at);
    weekly.mark_steps(sheet, at);
    let peaks = [
        (story.milestones.tan_peak, bounds[0], AMMONIA),
        (story.milestones.nitrite_peak, bounds[1], NITRITE),
    ];
    let told: Vec<_> = peaks.iter().filter(|p| p.0.value > p.1).collect();
    for (peak, _, colour) in &told {
        let place = (days(peak.minute), peak.value);
        sheet.mark(at, place, Form::Disc, *colour);
    }
    for (peak, _, _) in &told {
        let words = format!("{}, day {}", short(peak.value), story.day_of(peak.minute));
        sheet.words_at(at, (days(peak.minute), peak.value), vec![bold(&words, INK)]);
    }
    weekly.name_absences(sheet, at);
    let mut names = vec![
        EndName::curve("ammonia", hundredths(ends[0]), ends[0], pens[0]),
        EndName::curve("nitrite", hundredths(ends[1]), ends[1], pens[1]),
    ];
    names.extend(limit_names(bounds));
    name_ends(sheet, at, &names);
}

/// One name for both limits where they are one line, else one each, however close they lie.
fn limit_names([ammonia, nitrite]: [f64; 2]) -> Vec<EndName> {
    if trimmed(ammonia) == trimmed(nitrite) {
        return vec![EndName::limit(
            "both limits",
            trimmed(ammonia),
            ammonia,
            Pen::LIMIT,
        )];
    }
    vec![
        EndName::limit("limit, ammonia", trimmed(ammonia), ammonia, Pen::LIMIT),
        EndName::limit("limit, nitrite", trimmed(nitrite), nitrite, Pen::LIMIT),
    ]
}

fn nitrate(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let points = over_weeks(story.run, |r| r.nitrate_mg_n_per_l);
    let bands = story.bands_all_day(charted::NITRATE, "nitrate", NITRATE);
    let all = points.iter().map(|p| p.1).chain(heights(&bands));
    let up = from_zero(all, 1.0, 3);
    let mut panel = weekly.panel_with_changes(442.0, 540.0, up);
    panel.areas = bands;
    let (pen, end) = (Pen::curve(NITRATE), last(&points));
    panel.lines = vec![Line::new("nitrate", points, pen)];
    ready_line(story, &mut panel);
    let at = sheet.panel(panel, "Nitrate", "mg N/L", 14.0);
    name_ends(
        sheet,
        at,
        &[EndName::curve("nitrate", short(end), end, pen)],
    );
}

fn free_ammonia(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let bound = story.case.limits.free_ammonia.value;
    let points: Vec<Point> = story
        .days()
        .map(|d| (f64::from(d.day) + 0.5, d.free_ammonia_high.value))
        .collect();
    let bands = story.bands_of_days(FREE_AMMONIA, Of::Highest, "free ammonia", AMMONIA);
    let all = points.iter().map(|p| p.1).chain([bound]);
    let all = all.chain(heights(&bands));
    let mut panel = weekly.panel_with_changes(592.0, 690.0, from_zero(all, 1.2 * bound, 4));
    panel.areas = bands;
    let (pen, end) = (Pen::curve(AMMONIA), last(&points));
    panel.lines = vec![Line::new("free ammonia", points, pen)];
    panel.limits = vec![Limit::new("limit", bound, weekly.across(), Pen::LIMIT)];
    ready_line(story, &mut panel);
    let at = sheet.panel(panel, "Free ammonia, highest of the day", "mg N/L", 14.0);
    let value = if end < 0.001 {
        "under 0.001".to_string()
    } else {
        short(end)
    };
    let names = [
        EndName::limit("limit", trimmed(bound), bound, Pen::LIMIT),
        EndName::curve("free NH₃", value, end, pen),
    ];
    name_ends(sheet, at, &names);
}

/// A fine line at the ready day; with a forecast that of 50 of 100 tanks.
fn ready_line(story: &Story<'_>, panel: &mut Panel) {
    let day = match story.forecast {
        Some(forecast) => forecast.curve.day_of(50),
        None => story.verdict.day(),
    };
    if let Some(day) = day {
        let pen = Pen {
            alpha: 0.75,
            ..Pen::hair(INK)
        };
        let at = f64::from(day);
        panel.uprights.push(Upright { at, pen });
    }
}

/// The tightest nitrite limit of the run: with little chloride it is lower than the usual one.
pub fn nitrite_limit(story: &Story<'_>) -> f64 {
    let limits = &story.case.limits;
    let shown = story.run.shown().iter();
    shown
        .map(|r| limits.nitrite_with(r.chloride_mg_per_l))
        .fold(limits.nitrite.value, f64::min)
        .max(0.0)
}
