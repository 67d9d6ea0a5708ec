//! The nights: how low oxygen falls and when, how high carbon dioxide rises, how far pH swings.

use crate::analysis::charted;
use crate::analysis::ensemble::days::Of;
use crate::analysis::milestones::DayFigures;
use crate::base::clock::{DAY, TimeOfDay};

use super::Story;
use super::axis::{Axis, Scale, Tick, from_zero};
use super::bands::heights;
use super::ends::{EndName, name_ends};
use super::figure::{Anchor, Field, Figure, Form, Limit, Line};
use super::key::Key;
use super::night_air::{air_lines, name_air};
use super::nights_words::{sentences, titles};
use super::ph_bars::ph_bars;
use super::rect::Point;
use super::series::{Stretch, dark, last};
use super::sheet::{Sheet, bold, small};
use super::style::{CO2, DARK, INK, MUTED, OXYGEN, Pen};
use super::weekly::Weekly;
use super::words::{list, number, short, trimmed};

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let mut sheet = Sheet::new("nights", &titles(story), &sentences(story));
    let mut keys = story.curve_keys();
    keys.extend([
        Key::Line(Pen::LIMIT, "limit"),
        Key::Bar("lowest to highest of the day"),
        Key::Dark(DARK),
    ]);
    sheet.key(&keys);
    oxygen(story, &weekly, &mut sheet);
    hours(story, &weekly, &mut sheet);
    carbon_dioxide(story, &weekly, &mut sheet);
    acidity(story, &weekly, &mut sheet);
    sheet.figure
}

/// One value a day, at noon of that day.
fn daily(story: &Story<'_>, value: impl Fn(&DayFigures) -> f64) -> Vec<Point> {
    let noon = |d: &DayFigures| f64::from(d.day) + 0.5;
    story.days().map(|d| (noon(d), value(d))).collect()
}

fn oxygen(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let bound = story.case.limits.oxygen.value;
    let points = daily(story, |d| d.oxygen_low.value);
    let bands = story.bands_of_days(charted::OXYGEN, Of::Lowest, "lowest oxygen", OXYGEN);
    let all = points.iter().map(|p| p.1).chain([bound]);
    let all = all.chain(heights(&bands));
    let mut panel = weekly.panel(158.0, 372.0, from_zero(all, 1.1 * bound, 6));
    panel.areas = bands;
    let (pen, end) = (Pen::curve(OXYGEN), last(&points));
    let moment = story.milestones.oxygen_low;
    let worst = points
        .iter()
        .copied()
        .find(|p| p.0.floor() as u32 == story.day_of(moment.minute));
    panel.lines = vec![Line::new("lowest oxygen", points, pen)];
    panel.limits = vec![Limit::new("limit", bound, weekly.across(), Pen::LIMIT)];
    panel.uprights = air_lines(story, weekly);
    let at = sheet.panel(panel, "Lowest oxygen of the day", "mg/L", 14.0);
    if let Some(worst) = worst {
        sheet.mark(at, worst, Form::Disc, OXYGEN);
        let when = story.calendar().moment(moment.minute);
        let kind = if story.lowest_is_at_night() {
            "worst night"
        } else {
            "lowest"
        };
        let words = format!("{kind} {}, {when}", number(worst.1, 1));
        sheet.words_at(at, worst, vec![bold(&words, INK)]);
    }
    name_air(story, weekly, sheet, at);
    weekly.name_absences(sheet, at);
    let names = [
        EndName::curve("lowest O₂", number(end, 1), end, pen),
        EndName::limit("limit", trimmed(bound), bound, Pen::LIMIT),
    ];
    name_ends(sheet, at, &names);
}

fn hours(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let tick = |hour: u32| Tick {
        value: f64::from(hour),
        words: TimeOfDay::at(hour, 0).to_string(),
    };
    let up = Axis {
        low: 24.0,
        high: 0.0,
        scale: Scale::Even,
        ticks: [0, 12, 24].map(tick).into(),
    };
    let mut panel = weekly.panel(414.0, 478.0, up);
    panel.fields = dark_fields(story, weekly);
    panel.uprights = air_lines(story, weekly);
    let at = sheet.panel(panel, "Hour at which it is lowest", "", 12.0);
    for day in story.days() {
        let hour = TimeOfDay::of(day.oxygen_low.minute).hours();
        // a lowest value at the closing midnight belongs to the end of its day
        let hour = if day.oxygen_low.minute >= (day.day + 1) * DAY {
            24.0
        } else {
            hour
        };
        sheet.mark(at, (f64::from(day.day) + 0.5, hour), Form::Dot, OXYGEN);
    }
    let words = vec![small("shaded: lights off", MUTED)];
    let frame = sheet.figure.panels[at].frame;
    sheet.say(words, Anchor::Start, frame.right + 12.0, frame.top + 10.0);
}

/// The dark hours as fields; days with the same hours share one.
fn dark_fields(story: &Story<'_>, weekly: &Weekly<'_>) -> Vec<Field> {
    let mut fields = Vec::new();
    let (mut from, mut hours) = (0, dark(story.run, 0));
    for day in 1..=weekly.end {
        let today = if day < weekly.end {
            dark(story.run, day)
        } else {
            Vec::new()
        };
        if day == weekly.end || today != hours {
            fields.extend(hours.iter().map(|&stretch| dark_field(from, day, stretch)));
            (from, hours) = (day, today);
        }
    }
    fields
}

fn dark_field(from: u32, until: u32, stretch: Stretch) -> Field {
    Field {
        across: (f64::from(from), f64::from(until)),
        up: (TimeOfDay(stretch.0).hours(), TimeOfDay(stretch.1).hours()),
        colour: DARK,
        alpha: 1.0,
    }
}

fn carbon_dioxide(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let bound = story.case.limits.co2.value;
    let points = daily(story, |d| d.co2_high.value);
    let bands = story.bands_of_days(charted::CO2, Of::Highest, "highest CO₂", CO2);
    let all = points.iter().map(|p| p.1).chain([bound]);
    let all = all.chain(heights(&bands));
    let mut panel = weekly.panel(530.0, 660.0, from_zero(all, 1.2 * bound, 5));
    panel.areas = bands;
    let (pen, end) = (Pen::curve(CO2), last(&points));
    panel.lines = vec![Line::new("highest CO₂", points, pen)];
    panel.limits = vec![Limit::new("limit", bound, weekly.across(), Pen::LIMIT)];
    panel.uprights = air_lines(story, weekly);
    let at = sheet.panel(panel, "Highest CO₂ of the day", "mg/L", 14.0);
    name_tunings(story, weekly, sheet, at);
    let names = [
        EndName::limit("limit", trimmed(bound), bound, Pen::LIMIT),
        EndName::curve("highest CO₂", short(end), end, pen),
    ];
    name_ends(sheet, at, &names);
}

/// A small triangle on the floor for each day on which the valve was tuned.
fn name_tunings(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet, at: usize) {
    let tunings = story.run.tunings.iter().filter(|t| t.day < weekly.end);
    let tuned: Vec<u32> = tunings.map(|t| t.day).collect();
    let floor = 0.07 * sheet.figure.panels[at].up.high;
    for &day in &tuned {
        sheet.mark(at, (f64::from(day) + 0.5, floor), Form::Peak, INK);
    }
    let Some(&final_day) = tuned.last() else {
        return;
    };
    let named: Vec<String> = tuned.iter().map(u32::to_string).collect();
    let word = if tuned.len() == 1 { "day" } else { "days" };
    let words = format!("gas tuned on {word} {}", list(&named));
    let place = (f64::from(final_day) + 0.5, floor);
    sheet.words_at(at, place, vec![small(&words, MUTED)]);
}

fn acidity(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let title = ("pH range of the day", "");
    let at = ph_bars(story, weekly, sheet, (712.0, 826.0), title);
    sheet.figure.panels[at].uprights = air_lines(story, weekly);
    weekly.foot(sheet, at);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dark_field_covers_its_hours() {
        let field = dark_field(0, 7, (1110, 1440));
        assert_eq!((field.up, field.across), ((18.5, 24.0), (0.0, 7.0)));
    }
}
