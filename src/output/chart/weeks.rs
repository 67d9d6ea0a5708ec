//! The eight weeks at a glance: ammonia, nitrite, nitrate, free ammonia, and which ripening limits
//! each day keeps.

use crate::analysis::ready::{OxidationStep, Ready, Waiting};
use crate::base::clock::days;
use crate::engine::result::Reading;

use super::Story;
use super::axis::{Axis, Scale, from_zero};
use super::ends::{EndName, name_ends};
use super::figure::{Anchor, Figure, Form, Limit, Line, Panel, Shape, Upright};
use super::rect::{Point, Rect};
use super::series::{last, of_day, over_weeks};
use super::sheet::{Key, Sheet, bold, cell, plain};
use super::style::{AMMONIA, Colour, INK, MUTED, NITRATE, NITRITE, Pen};
use super::weekly::Weekly;
use super::words::{counted, hundredths, number, short, trimmed};

/// The chart.
pub fn figure(story: &Story<'_>) -> Figure {
    let weekly = Weekly::usual(story);
    let mut sheet = Sheet::new("weeks", &titles(story), &sentences(story));
    let mut keys = vec![
        Key::Line(Pen::curve(MUTED), "central forecast"),
        Key::Line(Pen::LIMIT, "limit"),
    ];
    keys.extend(weekly.keys());
    keys.push(Key::Cells("limit held all day", "not held"));
    sheet.key(&keys);
    ammonia_and_nitrite(story, &weekly, &mut sheet);
    nitrate(story, &weekly, &mut sheet);
    free_ammonia(story, &weekly, &mut sheet);
    strip(story, &weekly, &mut sheet);
    sheet.figure
}

fn ammonia_and_nitrite(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let ammonia = over_weeks(story.run, |r| r.tan_mg_n_per_l);
    let nitrite = over_weeks(story.run, |r| r.nitrite_mg_n_per_l);
    let bounds = [story.case.limits.total_ammonia.value, nitrite_limit(story)];
    let all = ammonia.iter().chain(&nitrite).map(|p| p.1).chain(bounds);
    let mut panel = weekly.panel_with_changes(182.0, 390.0, from_zero(all, 0.5, 5));
    panel.limits = bounds
        .map(|value| Limit::new("limit", value, weekly.across(), Pen::LIMIT))
        .into();
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
    names.extend(limit_names(&sheet.figure.panels[at], bounds));
    name_ends(sheet, at, &names);
}

/// One name for both limits where they lie together, else one each.
fn limit_names(panel: &Panel, bounds: [f64; 2]) -> Vec<EndName> {
    let [ammonia, nitrite] = bounds;
    if (panel.y(ammonia) - panel.y(nitrite)).abs() < 17.0 {
        let both = format!("{} and {}", trimmed(ammonia), trimmed(nitrite));
        return vec![EndName::limit("limits", both, ammonia, Pen::LIMIT)];
    }
    vec![
        EndName::limit("limit, ammonia", trimmed(ammonia), ammonia, Pen::LIMIT),
        EndName::limit("limit, nitrite", trimmed(nitrite), nitrite, Pen::LIMIT),
    ]
}

fn nitrate(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
    let points = over_weeks(story.run, |r| r.nitrate_mg_n_per_l);
    let up = from_zero(points.iter().map(|p| p.1), 1.0, 3);
    let mut panel = weekly.panel_with_changes(442.0, 540.0, up);
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
    let all = points.iter().map(|p| p.1).chain([bound]);
    let mut panel = weekly.panel_with_changes(592.0, 690.0, from_zero(all, 1.2 * bound, 4));
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

/// One row of cells per ripening limit, one cell per day.
fn strip(story: &Story<'_>, weekly: &Weekly<'_>, sheet: &mut Sheet) {
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

/// A fine line at the ready day.
fn ready_line(story: &Story<'_>, panel: &mut Panel) {
    if let Ready::Day(day) = story.verdict.ready {
        let pen = Pen {
            alpha: 0.75,
            ..Pen::hair(INK)
        };
        let at = f64::from(day);
        panel.uprights.push(Upright { at, pen });
    }
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

/// The tightest nitrite limit of the run: with little chloride it is lower than the usual one.
fn nitrite_limit(story: &Story<'_>) -> f64 {
    let limits = &story.case.limits;
    let shown = story.run.shown().iter();
    shown
        .map(|r| limits.nitrite_with(r.chloride_mg_per_l))
        .fold(limits.nitrite.value, f64::min)
        .max(0.0)
}

fn titles(story: &Story<'_>) -> Vec<String> {
    let calendar = story.calendar();
    let waited = story.verdict.waited_for.map(waited_words);
    match (&story.verdict.ready, waited) {
        (Ready::Day(day), Some(waited)) => {
            let when = calendar.day(*day);
            vec![
                format!("Ready from {when}: {waited} is the last to come right"),
                format!("Ready from day {day}: {waited} comes last"),
            ]
        }
        (Ready::Day(day), None) => vec![format!(
            "Ready from {}: every ripening limit holds from the first day",
            calendar.day(*day)
        )],
        (Ready::QuietNotRipe { day, step, .. }, _) => vec![format!(
            "Quiet from day {day}, but not shown to be ripe: {} falls short of the feed",
            step_words(*step)
        )],
        (Ready::LaterThan(day), Some(waited)) => vec![
            format!("Not ready by day {day}: still waiting for {waited}"),
            format!("Not ready by day {day}"),
        ],
        (Ready::LaterThan(day), None) => vec![format!("Not ready by day {day}")],
    }
}

fn waited_words(waiting: Waiting) -> &'static str {
    match waiting {
        Waiting::TotalAmmonia => "total ammonia",
        Waiting::Nitrite => "nitrite",
        Waiting::FreeAmmonia => "free ammonia",
        Waiting::Capacity(step) => step_words(step),
    }
}

fn step_words(step: OxidationStep) -> &'static str {
    match step {
        OxidationStep::Ammonia => "the ammonia step",
        OxidationStep::Nitrite => "the nitrite step",
    }
}

fn sentences(story: &Story<'_>) -> Vec<String> {
    let tank = &story.run.input.tank;
    let bound = story.case.limits.free_ammonia.value;
    let over = story
        .days()
        .filter(|d| d.free_ammonia_high.value > bound)
        .count();
    let free = match over {
        0 => "Free ammonia never passes its limit.".to_string(),
        n => format!(
            "Free ammonia is over its limit on {}.",
            counted(n, "day", "days")
        ),
    };
    let changes = match Weekly::usual(story).changes().len() {
        0 => "no water changes".to_string(),
        n => format!(
            "{} that take {} L",
            counted(n, "change", "changes"),
            number(story.milestones.litres_changed, 0)
        ),
    };
    let water = format!("{} L of water", number(tank.volume_l, 0));
    let late = "One central forecast: real tanks cleared nitrite up to two weeks later.";
    vec![
        format!("{water}, {changes}. {free} {late}"),
        format!("{free} {late}"),
        late.to_string(),
    ]
}
