//! The columns of the small panels: one quantity, all plans, one axis.

use crate::analysis::charted::{self, FREE_AMMONIA, OXYGEN, Quantity, TAN};
use crate::analysis::compare::Comparison;
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::ensemble::days::Of;
use crate::analysis::limits::Limits;
use crate::analysis::milestones::{Extreme, Milestones};
use crate::base::clock::days;
use crate::engine::result::Reading;
use crate::output::chart::axis::from_zero;
use crate::output::chart::bands::{At, areas, heights};
use crate::output::chart::figure::{Anchor, Area, Form, Limit, Line, Panel, Span};
use crate::output::chart::fonts::Face;
use crate::output::chart::rect::Point;
use crate::output::chart::series::over_weeks;
use crate::output::chart::sheet::{Sheet, bold, plain, small};
use crate::output::chart::style::{self, AMMONIA, Colour, INK, MUTED, NITRITE, Pen, SENTENCE};
use crate::output::chart::words::{short, trimmed};

use super::furnishing::{TO_MIDDLE, mark_changes, name_days, name_heights, shade_absences};
use super::grid::{Grid, days as day_axis};

/// Most steps of the axis of a small panel.
const STEPS: usize = 3;
/// Base line of the column's title above the first frame.
const TITLE_ABOVE: f64 = 22.0;

/// One quantity of all plans.
pub struct Course {
    title: &'static str,
    unit: &'static str,
    colour: Colour,
    quantity: Quantity,
    /// What the band is made of, below and above.
    of: [Of; 2],
    /// The curve of the central run.
    curve: fn(&Strategy<'_>) -> Vec<Point>,
    limit: fn(&Limits) -> f64,
    /// The value that is talked about.
    told: fn(&Milestones) -> Extreme,
    /// Least height of the axis.
    least: f64,
}

/// The columns, left to right.
pub const COURSES: [Course; 4] = [
    Course {
        title: "Total ammonia",
        unit: "mg N/L",
        colour: AMMONIA,
        quantity: TAN,
        of: [Of::Lowest, Of::Highest],
        curve: |s| by_the_hour(s, |r| r.tan_mg_n_per_l),
        limit: |limits| limits.total_ammonia.value,
        told: |m| m.tan_peak,
        least: 0.5,
    },
    Course {
        title: "Free ammonia NH₃",
        unit: "mg N/L",
        colour: AMMONIA,
        quantity: FREE_AMMONIA,
        of: [Of::Lowest, Of::Highest],
        curve: |s| by_the_hour(s, |r| r.free_ammonia_mg_n_per_l),
        limit: |limits| limits.free_ammonia.value,
        told: |m| m.free_ammonia_peak,
        least: 0.01,
    },
    Course {
        title: "Nitrite",
        unit: "mg N/L",
        colour: NITRITE,
        quantity: charted::NITRITE,
        of: [Of::Lowest, Of::Highest],
        curve: |s| by_the_hour(s, |r| r.nitrite_mg_n_per_l),
        limit: |limits| limits.nitrite.value,
        told: |m| m.nitrite_peak,
        least: 0.5,
    },
    Course {
        title: "Lowest oxygen a day",
        unit: "mg/L",
        colour: style::OXYGEN,
        quantity: OXYGEN,
        of: [Of::Lowest, Of::Lowest],
        curve: lowest_oxygen,
        limit: |limits| limits.oxygen.value,
        told: |m| m.oxygen_low,
        least: 1.0,
    },
];

fn by_the_hour(strategy: &Strategy<'_>, value: fn(&Reading) -> f64) -> Vec<Point> {
    over_weeks(&strategy.outcome.run, value)
}

fn lowest_oxygen(strategy: &Strategy<'_>) -> Vec<Point> {
    let days = strategy.outcome.milestones.days.iter();
    days.map(|day| (f64::from(day.day) + 0.5, day.oxygen_low.value))
        .collect()
}

impl Course {
    /// Draws the column.
    pub fn draw(&self, sheet: &mut Sheet, comparison: &Comparison<'_>, grid: &Grid, column: usize) {
        let plans = &comparison.strategies;
        let bands: Vec<Vec<Area>> = plans.iter().map(|s| self.bands(s)).collect();
        let curves: Vec<Vec<Point>> = plans.iter().map(self.curve).collect();
        let limits = plans.iter().map(|s| (self.limit)(&s.case.limits));
        let all = bands.iter().flat_map(|bands| heights(bands));
        let all = all
            .chain(curves.iter().flatten().map(|p| p.1))
            .chain(limits);
        let up = from_zero(all, self.least, STEPS);
        self.name(sheet, grid, column);
        for (row, (areas, points)) in bands.into_iter().zip(curves).enumerate() {
            let frame = grid.frame(row, column);
            let mut panel = Panel::new(frame, day_axis(comparison.last_day), up.clone());
            panel.title = format!("{}, {}: {}", plans[row].key, self.title, self.unit);
            panel.areas = areas;
            panel.lines = vec![Line::new(self.title, points, Pen::curve(self.colour))];
            self.furnish(sheet, panel, &plans[row], row == 0);
            if grid.is_last(row) {
                name_days(sheet);
            }
        }
    }

    fn bands(&self, strategy: &Strategy<'_>) -> Vec<Area> {
        let noon = |day: u32| {
            Some(At {
                x: f64::from(day) + 0.5,
                low: *strategy.bands.of_day(day, self.quantity, self.of[0])?,
                high: *strategy.bands.of_day(day, self.quantity, self.of[1])?,
            })
        };
        let mut places: Vec<At> = strategy.bands.days().filter_map(noon).collect();
        let from = days(strategy.case.input.filled_at);
        places.iter_mut().for_each(|at| at.x = at.x.max(from));
        areas(self.title, self.colour, &places)
    }

    fn name(&self, sheet: &mut Sheet, grid: &Grid, column: usize) {
        let frame = grid.frame(0, column);
        let title = Span::new(self.title, Face::SemiBold, SENTENCE, INK);
        let words = vec![title, plain(self.unit, MUTED)];
        sheet.say(words, Anchor::Start, frame.left, frame.top - TITLE_ABOVE);
    }

    /// Limit, absences, changes, ticks and the value that is talked about.
    fn furnish(&self, sheet: &mut Sheet, mut panel: Panel, strategy: &Strategy<'_>, names: bool) {
        let limit = (self.limit)(&strategy.case.limits);
        let across = (0.0, panel.across.high);
        panel.limits = vec![Limit::new("limit", limit, across, Pen::LIMIT)];
        shade_absences(&mut panel, strategy);
        name_heights(sheet, &panel);
        mark_changes(sheet, &panel, strategy);
        sheet.figure.panels.push(panel);
        let at = sheet.figure.panels.len() - 1;
        if names {
            let this = &sheet.figure.panels[at];
            let (x, y) = (this.frame.right + 5.0, this.y(limit) + TO_MIDDLE);
            sheet.say_clear(vec![small(&trimmed(limit), INK)], Anchor::Start, x, y);
        }
        let told = (self.told)(&strategy.outcome.milestones);
        let place = (days(told.minute), told.value);
        sheet.mark(at, place, Form::Disc, self.colour);
        let day = told.day().min(strategy.case.input.last_day);
        let words = format!("{}, day {day}", short(told.value));
        sheet.words_at(at, place, vec![bold(&words, INK)]);
    }
}
