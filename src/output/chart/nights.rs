//! The nights: how low oxygen falls and when, how high carbon dioxide rises, how far pH swings.

use crate::analysis::milestones::{DayFigures, Extreme};
use crate::base::clock::{DAY, TimeOfDay};
use crate::engine::input::TimerLine;

use super::Story;
use super::axis::{Axis, Scale, Tick, about, from_zero};
use super::ends::{EndName, name_ends};
use super::figure::{Anchor, Bar, Field, Figure, Form, Limit, Line, Shape, Upright};
use super::rect::Point;
use super::series::{Stretch, dark, last};
use super::sheet::{Key, Sheet, bold, small};
use super::style::{CO2, DARK, INK, MUTED, OXYGEN, Pen};
use super::weekly::Weekly;
use super::words::{counted, list, number, short, span, trimmed};

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let mut sheet = Sheet::new("nights", &titles(story), &sentences(story));
    sheet.key(&[
        Key::Line(Pen::curve(MUTED), "central forecast"),
        Key::Line(Pen::LIMIT, "limit"),
        Key::Bar("lowest to highest of the day"),
        Key::Dark(DARK),
    ]);
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
    let all = points.iter().map(|p| p.1).chain([bound]);
    let mut panel = weekly.panel(158.0, 372.0, from_zero(all, 1.1 * bound, 6));
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
        let words = format!("worst night {}, {when}", number(worst.1, 1));
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

/// Lines of the air pump's plan that begin after the first days.
fn later_air<'a>(story: &'a Story<'_>, weekly: &Weekly<'_>) -> impl Iterator<Item = &'a TimerLine> {
    let end = weekly.end;
    let lines = story.run.input.air.iter();
    lines.filter(move |l| l.from_day > 0 && l.from_day < end)
}

fn air_lines(story: &Story<'_>, weekly: &Weekly<'_>) -> Vec<Upright> {
    later_air(story, weekly)
        .map(|line| Upright {
            at: f64::from(line.from_day),
            pen: Pen::hair(OXYGEN).wide(1.4),
        })
        .collect()
}

fn is_on(line: &TimerLine) -> bool {
    line.value > 0.0 && line.window.minutes() > 0
}

fn name_air(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet, at: usize) {
    for line in later_air(story, weekly) {
        let this = &sheet.figure.panels[at];
        let (x, top) = (this.x(f64::from(line.from_day)), this.frame.top);
        let corners = vec![(x - 5.0, top - 8.5), (x + 5.0, top - 8.5), (x, top - 0.5)];
        sheet.shape(Shape::Fill(corners, OXYGEN, 1.0));
        let words = if is_on(line) {
            format!("air {}–{}", line.window.on, line.window.off)
        } else {
            "no air".to_string()
        };
        let place = (f64::from(line.from_day), sheet.figure.panels[at].up.high);
        sheet.words_at(at, place, vec![bold(&words, INK)]);
    }
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
    let all = points.iter().map(|p| p.1).chain([bound]);
    let mut panel = weekly.panel(530.0, 660.0, from_zero(all, 1.2 * bound, 5));
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

/// One upright bar a day from the lowest to the highest pH.
pub fn ph_bars(
    story: &Story<'_>,
    weekly: &Weekly<'_>,
    sheet: &mut Sheet,
    (top, bottom): (f64, f64),
    (title, unit): (&str, &str),
) -> usize {
    let all: Vec<&DayFigures> = story.days().collect();
    let low = all.iter().map(|d| d.ph_low.value).fold(7.0, f64::min);
    let high = all.iter().map(|d| d.ph_high.value).fold(low, f64::max);
    let mut panel = weekly.panel(top, bottom, about(low, high, 4));
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

fn titles(story: &Story<'_>) -> Vec<String> {
    let bound = story.case.limits.oxygen.value;
    let low = story.milestones.oxygen_low;
    let under = story.days().filter(|d| d.oxygen_low.value < bound).count();
    let nights = story.days().count();
    let lowest = format!(
        "{} mg/L on day {}",
        number(low.value, 1),
        story.day_of(low.minute)
    );
    if let Some((day, before, after)) = air_helps(story) {
        let (before, after) = (number(before, 1), number(after, 1));
        return vec![format!(
            "Night air from day {day} lifts the lowest oxygen from {before} to {after} mg/L"
        )];
    }
    vec![match under {
        0 => format!(
            "Oxygen never falls under {} mg/L: at worst {lowest}",
            trimmed(bound)
        ),
        n if n == nights => format!(
            "Oxygen falls under {} mg/L every night, to {lowest}",
            trimmed(bound)
        ),
        n => format!(
            "Oxygen falls under {} mg/L in {}, to {lowest}",
            trimmed(bound),
            counted(n, "night", "nights")
        ),
    }]
}

/// Day from which air runs that did not before, with the lowest oxygen of the week before and of
/// the time after, if it lifts it by 0.3 mg/L or more.
fn air_helps(story: &Story<'_>) -> Option<(u32, f64, f64)> {
    let lines = &story.run.input.air;
    let first = lines.iter().find(|l| is_on(l))?;
    let day = first.from_day;
    let low = |from: u32, until: u32| {
        let some = story.days().filter(move |d| (from..until).contains(&d.day));
        some.map(|d| d.oxygen_low.value)
            .fold(f64::INFINITY, f64::min)
    };
    let end = story.run.input.last_day + 1;
    if day < 3 || day + 3 > end {
        return None;
    }
    let (before, after) = (low(day.saturating_sub(7), day), low(day + 1, end));
    (after >= before + 0.3).then_some((day, before, after))
}

/// Minutes with oxygen under a bound, over the whole run.
fn minutes_under(story: &Story<'_>, bound: f64) -> u32 {
    let shown = story.run.shown().windows(2);
    shown
        .filter(|two| two[0].oxygen_mg_per_l < bound)
        .map(|two| two[1].minute - two[0].minute)
        .sum()
}

fn sentences(story: &Story<'_>) -> Vec<String> {
    let calendar = story.calendar();
    let (low, high) = (story.milestones.oxygen_low, story.milestones.co2_high);
    let oxygen = story.case.limits.oxygen.value;
    let moment = calendar.moment(low.minute);
    let worst = match minutes_under(story, oxygen) {
        0 => format!(
            "The margin is smallest at {moment}: {} mg/L.",
            number(low.value - oxygen, 1)
        ),
        minutes => format!(
            "Under {} mg/L for {} in all, lowest at {moment}.",
            trimmed(oxygen),
            span(minutes)
        ),
    };
    let bound = story.case.limits.co2.value;
    let over = story.days().filter(|d| d.co2_high.value > bound).count();
    let gas = match over {
        0 => format!("CO₂ reaches {} mg/L at most.", short(high.value)),
        n => format!(
            "CO₂ passes {} mg/L on {} and reaches {}.",
            trimmed(bound),
            counted(n, "day", "days"),
            short(high.value)
        ),
    };
    let swing = story
        .days()
        .map(|d| d.ph_high.value - d.ph_low.value)
        .fold(0.0, f64::max);
    let swing = format!("pH swings by up to {} in a day.", number(swing, 1));
    vec![
        format!("{worst} {gas} {swing} Lowest and highest count both sides of every water change."),
        format!("{worst} {gas} {swing}"),
        worst,
    ]
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
