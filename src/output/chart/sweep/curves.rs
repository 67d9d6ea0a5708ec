//! The courses of ammonia, nitrite and oxygen along a grid of one value, pale to deep.

use crate::analysis::charted::{self, OXYGEN, Quantity, TAN};
use crate::analysis::ensemble::days::Of;
use crate::analysis::limits::Limits;
use crate::analysis::sweep::Sweep;
use crate::output::chart::axis::{Axis, Scale, Tick, from_zero};
use crate::output::chart::figure::{Anchor, Figure, Limit, Line, Panel};
use crate::output::chart::rect::{Point, Rect};
use crate::output::chart::sheet::{LEFT, Sheet, bold, small};
use crate::output::chart::style::{self, AMMONIA, Colour, INK, NITRITE, Pen};
use crate::output::chart::words::trimmed;
use crate::output::sweep::words::{bare, full, setting};
use crate::output::text::words::capital;

use super::{curves_key, tint};

/// Right edge of the panels: names stand beyond it.
const RIGHT: f64 = 990.0;
/// Most steps of an axis.
const STEPS: usize = 4;
/// Days between two named ones.
const STRIDE: usize = 7;
/// From a frame up to its title.
const TITLE_UP: f64 = 16.0;

/// One panel of curves.
struct Course {
    title: &'static str,
    unit: &'static str,
    hue: Colour,
    quantity: Quantity,
    of: Of,
    limit: fn(&Limits) -> f64,
    /// Least height of the axis.
    least: f64,
    /// Top and bottom of the frame.
    frame: (f64, f64),
}

const COURSES: [Course; 3] = [
    Course {
        title: "Total ammonia, highest of the day",
        unit: "mg N/L",
        hue: AMMONIA,
        quantity: TAN,
        of: Of::Highest,
        limit: |limits| limits.total_ammonia.value,
        least: 0.5,
        frame: (132.0, 352.0),
    },
    Course {
        title: "Nitrite, highest of the day",
        unit: "mg N/L",
        hue: NITRITE,
        quantity: charted::NITRITE,
        of: Of::Highest,
        limit: |limits| limits.nitrite.value,
        least: 0.5,
        frame: (402.0, 602.0),
    },
    Course {
        title: "Oxygen, lowest of the day",
        unit: "mg/L",
        hue: style::OXYGEN,
        quantity: OXYGEN,
        of: Of::Lowest,
        limit: |limits| limits.oxygen.value,
        least: 1.0,
        frame: (652.0, 826.0),
    },
];

/// Draws them; the title tells of the main figure.
pub fn figure(sweep: &Sweep, main: usize) -> Figure {
    let mut sheet = Sheet::new("curves", &titles(sweep, main), &sentences(sweep));
    for course in &COURSES {
        course.draw(&mut sheet, sweep);
    }
    curves_key::draw(&mut sheet, sweep, (RIGHT + 56.0, COURSES[0].frame.0));
    let last = sheet.figure.panels.len() - 1;
    let across = sheet.figure.panels[last].across.clone();
    sheet.ticks_below(last, &across);
    let words = vec![small("day", style::MUTED)];
    sheet.say(
        words,
        Anchor::Start,
        RIGHT + 12.0,
        COURSES[2].frame.1 + 22.0,
    );
    sheet.figure
}

impl Course {
    fn draw(&self, sheet: &mut Sheet, sweep: &Sweep) {
        let count = sweep.points.len();
        let curves: Vec<Vec<Point>> = (0..count).map(|number| self.curve(sweep, number)).collect();
        let limit = (self.limit)(&sweep.limits);
        let named = |number: usize| setting(&sweep.axes[0], number);
        let ends = [0, count - 1].map(|number| (told(&curves[number], self.of), named(number)));
        let mut panel = self.panel(sweep, &curves, limit);
        panel.lines = (curves.into_iter().enumerate())
            .map(|(number, points)| {
                let pen = Pen::curve(tint::of_curve(self.hue, number, count));
                Line::new(&named(number), points, pen)
            })
            .collect();
        let at = sheet.panel(panel, self.title, self.unit, TITLE_UP);
        self.name_limit(sheet, at, limit);
        for (place, words) in ends {
            sheet.words_at(at, place, vec![bold(&words, INK)]);
        }
    }
    /// The frame of the curves, with the limit.
    fn panel(&self, sweep: &Sweep, curves: &[Vec<Point>], limit: f64) -> Panel {
        let heights = curves.iter().flatten().map(|point| point.1);
        let up = from_zero(heights.chain([limit]), self.least, STEPS);
        let frame = Rect::new(LEFT, self.frame.0, RIGHT, self.frame.1);
        let mut panel = Panel::new(frame, days(sweep.last_day), up);
        let across = (0.0, panel.across.high);
        panel.limits = vec![Limit::new("limit", limit, across, Pen::LIMIT)];
        panel
    }
    fn name_limit(&self, sheet: &mut Sheet, at: usize, limit: f64) {
        let y = sheet.figure.panels[at].y(limit) + 4.5;
        let words = vec![small(&trimmed(limit), INK)];
        sheet.say_clear(words, Anchor::Start, RIGHT + 12.0, y);
    }
    /// The middle of the members, at noon of each day.
    fn curve(&self, sweep: &Sweep, number: usize) -> Vec<Point> {
        let bands = &sweep.points[number].bands;
        let noon = |day: u32| {
            let [_, _, middle, ..] = bands.of_day(day, self.quantity, self.of)?;
            Some((f64::from(day) + 0.5, f64::from(*middle)))
        };
        let points = bands.days().filter_map(noon);
        points.filter(|point| point.1.is_finite()).collect()
    }
}

/// The point of a curve that is talked about: the highest, or of a lowest of the day the lowest.
fn told(curve: &[Point], of: Of) -> Point {
    let by_height = |a: &&Point, b: &&Point| a.1.total_cmp(&b.1);
    let found = match of {
        Of::Lowest => curve.iter().min_by(by_height),
        _ => curve.iter().max_by(by_height),
    };
    found.copied().unwrap_or((0.0, 0.0))
}

fn days(last_day: u32) -> Axis {
    let end = last_day + 1;
    Axis {
        low: 0.0,
        high: f64::from(end),
        scale: Scale::Even,
        ticks: (0..=end)
            .step_by(STRIDE)
            .map(|day| Tick {
                value: f64::from(day),
                words: day.to_string(),
            })
            .collect(),
    }
}

fn titles(sweep: &Sweep, main: usize) -> Vec<String> {
    let axis = &sweep.axes[0];
    let last = sweep.points.len() - 1;
    let ends = format!("{} to {}", setting(axis, 0), setting(axis, last));
    let line = &sweep.lines[main];
    let (name, what) = (line.short, capital(axis.words()));
    let [low, high] = [0, last].map(|number| &line.values[number]);
    let from = full(line, low, sweep.last_day);
    let to = full(line, high, sweep.last_day);
    if from == to {
        return vec![
            format!("{what}, {ends}: {name} {from} at both ends"),
            format!("{} {from} at both ends of the grid", capital(name)),
        ];
    }
    let moves = match line.unit {
        "day" => format!("from {from} to {to}"),
        _ => format!("from {} to {to}", bare(line, low)),
    };
    vec![
        format!("{what}, {ends}: {name} {moves}"),
        format!("{} {moves} along the grid", capital(name)),
    ]
}

fn sentences(sweep: &Sweep) -> Vec<String> {
    let members = sweep.common.members;
    vec![
        format!(
            "The middle of the same {members} plausible tanks, day by day: less high than their middle peak, since they peak on \
             different days. Pale to deep along the grid; dashed: limits."
        ),
        format!(
            "The middle of the same {members} plausible tanks, day by day; pale to deep along the grid. Dashed: limits."
        ),
    ]
}
