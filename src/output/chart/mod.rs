//! The charts: six pictures of one run, seven with a forecast, and one of levers, each first a plain
//! [`Figure`], then SVG, then PNG.
//!
//! ```text
//! run ─► weeks · ready · nights · day · alkalinity · capacity · nitrogen   what goes where, in words
//!        sheet · weekly · ends · labels · axis                     placed, measured, kept apart
//!        figure                                                    a plain value; tests look here
//!        thin ─► draw ─► backend ─► render ─► pack                 SVG text; PNG = that text drawn
//! ```
//!
//! One text is the picture: the PNG is the SVG rendered with two embedded faces, so the two cannot
//! differ and no font of the machine is ever read.

mod accounts;
mod alkalinity;
mod alkalinity_forecast_words;
mod alkalinity_words;
pub mod axis;
mod backend;
mod bands;
pub mod calendar;
mod capacity;
mod capacity_steps;
mod capacity_words;
pub mod change_worth;
pub mod compare;
mod day;
mod day_bands;
mod day_forecast_words;
mod day_hours;
mod day_steps;
mod day_switches;
mod day_words;
mod decade_lines;
mod draw;
mod ends;
pub mod figure;
pub mod fonts;
mod hundred;
mod key;
pub mod label;
mod labels;
mod later;
pub mod lesson;
mod lever_bars;
mod lever_columns;
mod lever_words;
pub mod levers;
mod night_air;
mod nights;
mod nights_forecast_words;
mod nights_words;
mod nitrogen;
mod nitrogen_names;
mod nitrogen_words;
mod notes;
mod pack;
pub mod panel;
mod ph_bars;
mod plan_marks;
mod power_cuts;
mod ready;
mod ready_cells;
mod ready_names;
mod ready_steps;
mod ready_tests;
mod ready_words;
pub mod rect;
mod render;
mod ripening;
mod row_scale;
mod series;
mod sheet;
mod signs;
mod stack;
pub mod study;
pub mod style;
pub mod sweep;
mod thin;
mod weekly;
mod weeks;
mod weeks_forecast_words;
mod weeks_words;
pub mod words;

use rayon::prelude::*;

use crate::analysis::case::Case;
use crate::analysis::forecast::Forecast;
use crate::analysis::milestones::{DayFigures, Milestones};
use crate::analysis::ready::Verdict;
use crate::base::clock::DAY;
use crate::engine::result::RunResult;

pub use figure::Figure;
pub(in crate::output) use render::FONT_RULES;
pub use render::{RenderError, png, svg};

use words::Calendar;

/// What the charts tell: a run and what it means.
#[derive(Debug, Clone, Copy)]
struct Story<'a> {
    run: &'a RunResult,
    case: &'a Case,
    milestones: &'a Milestones,
    verdict: &'a Verdict,
    forecast: Option<&'a Forecast>,
}

impl Story<'_> {
    fn calendar(&self) -> Calendar {
        Calendar {
            filled_on: self.case.filled_on,
        }
    }
    /// The day a minute belongs to; the closing midnight belongs to the last day.
    fn day_of(&self, minute: u32) -> u32 {
        (minute / DAY).min(self.run.input.last_day)
    }
    /// Whether the lowest oxygen of the run ends a dark spell, lights-on itself included; now and
    /// then it falls by day.
    fn lowest_is_at_night(&self) -> bool {
        let minute = self.milestones.oxygen_low.minute;
        let after = self.run.readings.partition_point(|r| r.minute < minute);
        let before = after.checked_sub(1).map(|n| &self.run.readings[n]);
        before.is_none_or(|r| r.light_umol_per_m2_s <= 0.0)
    }
    /// The figures of the days that are shown.
    fn days(&self) -> impl Iterator<Item = &DayFigures> {
        let last = self.run.input.last_day;
        self.milestones.days.iter().filter(move |d| d.day <= last)
    }
}

/// All charts of a run: the weeks, the nights, each of the asked `days`, alkalinity, capacity and
/// nitrogen. A day outside the run has no chart. With a forecast there is one more, of who is ready by
/// when, and the others show bands of many plausible tanks, by the hour where it was made for that day.
pub fn figures(
    run: &RunResult,
    case: &Case,
    milestones: &Milestones,
    verdict: &Verdict,
    forecast: Option<&Forecast>,
    days: &[u32],
) -> Vec<Figure> {
    let story = Story {
        run,
        case,
        milestones,
        verdict,
        forecast,
    };
    let mut all = vec![Chart::Run(weeks::figure)];
    all.extend(forecast.map(Chart::Forecast));
    all.push(Chart::Run(nights::figure));
    all.extend(days.iter().map(|&day| Chart::Day(day)));
    all.extend([alkalinity::figure, capacity::figure, nitrogen::figure].map(Chart::Run));
    // side by side; the order stays
    let figure = |chart: &Chart| chart.figure(&story);
    let figures: Vec<Option<Figure>> = all.par_iter().with_max_len(1).map(figure).collect();
    figures.into_iter().flatten().collect()
}

/// A chart to be laid out.
enum Chart<'a> {
    Run(fn(&Story<'_>) -> Figure),
    Forecast(&'a Forecast),
    Day(u32),
}

impl Chart<'_> {
    fn figure(&self, story: &Story<'_>) -> Option<Figure> {
        match self {
            Chart::Run(figure) => Some(figure(story)),
            Chart::Forecast(forecast) => Some(ready::figure(story, forecast)),
            Chart::Day(day) => day::figure(story, *day),
        }
    }
}
