//! Milestones against the one value that is varied: the middle tank, the band of 90 of 100, the central run.

use crate::analysis::compare::lines::Line as Milestone;
use crate::analysis::compare::value::Value;
use crate::analysis::sweep::Sweep;
use crate::analysis::sweep::border::{is_ready_day, limit};
use crate::output::chart::axis::{Axis, Scale, Tick, around, from_zero};
use crate::output::chart::compare::furnishing::name_heights;
use crate::output::chart::figure::{Anchor, Figure, Form, Limit, Line, Panel, Span};
use crate::output::chart::fonts::Face;
use crate::output::chart::key::Key;
use crate::output::chart::later::{LATER, up_to_the_end};
use crate::output::chart::rect::Rect;
use crate::output::chart::sheet::{LEFT, Sheet, plain};
use crate::output::chart::style::{INK, MUTED, Pen, SENTENCE};
use crate::output::sweep::words::unit;
use crate::output::text::words::capital;

use super::milestones_series::Series;
use super::names::Names;
use super::{map_words, names, tint};

/// Columns of panels; their width, the gap between them, the left edge of the first.
const COLUMNS: usize = 3;
const WIDE: f64 = 300.0;
const GAP: f64 = 74.0;
/// Tops of the rows of panels, and their height.
const TOPS: [f64; 2] = [168.0, 548.0];
const TALL: f64 = 264.0;
/// From a frame up to its title; from its foot to the path below the names.
const TITLE_UP: f64 = 16.0;
const PATH_DOWN: f64 = 46.0;
/// Air before the first and after the last point, as a share of the range.
const AIR: f64 = 0.03;
/// Widest name below a panel: wider ones of two panels would meet.
const WIDEST: f64 = 88.0;
/// Room between two names below a panel.
const APART: f64 = 10.0;
/// An axis begins at zero where the lowest value is under this share of the highest.
const FROM_ZERO: f64 = 0.5;
/// Most steps of an axis.
const STEPS: usize = 4;

/// Draws them, six at most.
pub fn figure(sweep: &Sweep, of: &[usize]) -> Figure {
    let main = of
        .iter()
        .copied()
        .find(|&at| is_ready_day(&sweep.lines[at]));
    let titles = map_words::titles(sweep, main.unwrap_or(of[0]));
    let mut sheet = Sheet::new("milestones", &titles, &sentences(sweep));
    sheet.key(&[
        Key::Line(Pen::curve(MUTED), "middle tank"),
        Key::Line(Pen::dotted(MUTED), "central run"),
        Key::Band("90 of 100 tanks; of ready days 10 to 90 of 100"),
        Key::Line(Pen::LIMIT, "limit"),
    ]);
    for (number, &place) in of.iter().take(COLUMNS * TOPS.len()).enumerate() {
        let left = LEFT + 16.0 + (number % COLUMNS) as f64 * (WIDE + GAP);
        let top = TOPS[number / COLUMNS];
        draw(
            &mut sheet,
            sweep,
            place,
            Rect::new(left, top, left + WIDE, top + TALL),
        );
    }
    sheet.figure
}

fn draw(sheet: &mut Sheet, sweep: &Sweep, place: usize, frame: Rect) {
    let line = &sweep.lines[place];
    let series = Series::of(sweep, place);
    let panel = panel(sweep, line, &series, frame);
    title(sheet, line, &frame);
    name_heights(sheet, &panel);
    let axis = panel.across.clone();
    sheet.figure.panels.push(panel);
    let at = sheet.figure.panels.len() - 1;
    for point in series.middle {
        sheet.mark(at, point, Form::Dot, tint::hue(line.name));
    }
    sheet.ticks_below(at, &axis);
    let head = Names::of(&sweep.axes[0], WIDEST).head(WIDE);
    let (x, y) = ((frame.left + frame.right) / 2.0, frame.bottom + PATH_DOWN);
    sheet.say(head, Anchor::Middle, x, y);
}

fn panel(sweep: &Sweep, line: &Milestone, series: &Series, frame: Rect) -> Panel {
    let limit = limit(line.name, &sweep.limits).filter(|_| line.unit != "of 100");
    let heights: Vec<f64> = series.heights().chain(limit).collect();
    let up = match is_ready_day(line) {
        true => up_to_the_end(&heights, sweep.last_day, up),
        false => up(&heights),
    };
    let mut panel = Panel::new(frame, across(sweep, &frame), up);
    let (hue, ends) = (tint::hue(line.name), (panel.across.low, panel.across.high));
    panel.title = format!("{} against {}", line.short, sweep.axes[0].words());
    panel.areas = series.band(line.short, hue).into_iter().collect();
    let limit = limit.map(|at| Limit::new("limit", at, ends, Pen::LIMIT));
    panel.limits = limit.into_iter().collect();
    panel.lines = vec![
        Line::new("central run", series.central.clone(), Pen::dotted(MUTED)),
        Line::new("middle tank", series.middle.clone(), Pen::curve(hue)),
    ];
    panel.lines.retain(|line| !line.points.is_empty());
    panel
}

fn up(heights: &[f64]) -> Axis {
    let low = heights.iter().copied().fold(f64::INFINITY, f64::min);
    let high = heights.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    match heights.is_empty() || low < FROM_ZERO * high {
        true => from_zero(heights.iter().copied(), 1e-3, STEPS),
        false => around(low, high, STEPS),
    }
}

fn across(sweep: &Sweep, frame: &Rect) -> Axis {
    let axis = &sweep.axes[0];
    let count = axis.settings.len();
    let (first, last) = (axis.settings[0].number, axis.settings[count - 1].number);
    let air = AIR * (last - first);
    let named = Names::of(axis, WIDEST);
    let each = named.widest + APART;
    let stride = names::stride(count - 1, each, frame.width() / (1.0 + 2.0 * AIR));
    let ticks = names::named(count, stride).into_iter().map(|place| Tick {
        value: axis.settings[place].number,
        words: named.words[place].clone(),
    });
    Axis {
        low: first - air,
        high: last + air,
        scale: Scale::Even,
        ticks: ticks.collect(),
    }
}

fn title(sheet: &mut Sheet, line: &Milestone, frame: &Rect) {
    let name = capital(line.short);
    let mut words = vec![Span::new(&name, Face::SemiBold, SENTENCE, INK)];
    if !unit(line).is_empty() {
        words.push(plain(unit(line), MUTED));
    }
    sheet.say(words, Anchor::Start, frame.left, frame.top - TITLE_UP);
}

fn sentences(sweep: &Sweep) -> Vec<String> {
    let members = sweep.common.members;
    let last = sweep.last_day;
    let is_late = |line: &Milestone| is_ready_day(line) && line.values.contains(&Value::Later);
    let base = format!("On the same {members} plausible tanks at every point.");
    match sweep.lines.iter().any(is_late) {
        true => vec![format!(
            "{base} On the line {LATER}: later than day {last}."
        )],
        false => vec![base],
    }
}
