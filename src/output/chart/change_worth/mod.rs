//! The worth of every change along the calendar: the order of dropping, then days and figures, each for itself.
//!
//! ```text
//! figure    panels and their heights; this file
//! order     the numbered circles over the calendar
//! bars      a bar per change, with its range, and words beside the tallest
//! words     title and sentence
//! ```

mod bars;
mod order;
mod words;

use crate::analysis::case::Case;
use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::effects::{Effects, JUDGED, figure as of_list};
use crate::analysis::outcome::Outcome;

use super::Story;
use super::figure::Figure;
use super::sheet::Sheet;
use super::weekly::Weekly;
use bars::{Series, draw};

/// Upper and lower edges of the panels.
const EDGES: [(f64, f64); 4] = [
    (232.0, 402.0),
    (458.0, 548.0),
    (604.0, 694.0),
    (750.0, 824.0),
];
/// Axes are no shorter than this: a day; then so many times what is told of a figure.
const LEAST_DAYS: f64 = 1.0;
const LEAST_TOLD: f64 = 4.0;
/// Panels of figures: which of the judged ones, its title, and its unit.
const FIGURES: [(usize, &str, &str); 3] = [
    (0, "Ammonia peak", "mg N/L higher"),
    (1, "Nitrite peak", "mg N/L higher"),
    (3, "Bright light on ammonia", "hours more"),
];

/// The chart; `outcome` is the plan's own run, for its calendar.
pub fn figure(case: &Case, outcome: &Outcome, worth: &ChangeWorth) -> Figure {
    let story = Story {
        run: &outcome.run,
        case,
        milestones: &outcome.milestones,
        verdict: &outcome.verdict,
        forecast: None,
    };
    let weekly = Weekly::usual(&story);
    let mut sheet = Sheet::new(
        "rank-changes",
        &words::titles(worth),
        &words::sentences(worth),
    );
    let mut panels = vec![draw(&mut sheet, &weekly, worth, &days(worth), EDGES[0])];
    for ((judged, title, unit), edges) in FIGURES.into_iter().zip(&EDGES[1..]) {
        let series = of_figure(judged, title, unit);
        panels.push(draw(&mut sheet, &weekly, worth, &series, *edges));
    }
    order::circles(&mut sheet, panels[0], worth);
    weekly.name_absences(&mut sheet, panels[0]);
    weekly.foot(&mut sheet, panels[panels.len() - 1]);
    sheet.figure
}

fn days(worth: &ChangeWorth) -> Series {
    let unit = "days later, mean and 10 to 90 of 100 tanks";
    Series {
        title: "Ready day, if this change is left out",
        unit: format!("{unit}{}; below zero: sooner", words::moving(worth)),
        read: Box::new(Effects::days_later),
        range: true,
        digits: 1,
        told_from: 0.1,
        least: LEAST_DAYS,
    }
}

fn of_figure(judged: usize, title: &'static str, unit: &'static str) -> Series {
    let told_from = of_list(JUDGED[judged]).told_from;
    Series {
        title,
        unit: unit.to_string(),
        read: Box::new(move |effects| effects.judged[judged].effect.mean),
        range: false,
        digits: if unit.starts_with("hours") { 0 } else { 2 },
        told_from,
        least: LEAST_TOLD * told_from,
    }
}
