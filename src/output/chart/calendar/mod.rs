//! Calendars that were found: the trade-off between litres and the ready day, and each calendar along the weeks.

mod rows;
mod words;

use crate::analysis::calendar::Found;
use crate::analysis::calendar::choice::Choice;
use crate::analysis::calendar::score::Score;
use crate::output::manifest;

use super::Story;
use super::axis::{Axis, around, from_zero};
use super::figure::{Anchor, Figure, Form, Panel};
use super::later::{later, up_to_the_end};
use super::rect::Rect;
use super::sheet::{LEFT, RIGHT, Sheet, bold, plain};
use super::style::{CHANGE, Colour, INK, MUTED};
use super::weekly::Weekly;

/// Upper and lower edge of the panel of the trade-off, and from it up to its title.
const EDGES: (f64, f64) = (132.0, 372.0);
const TITLE_UP: f64 = 16.0;
/// Most steps of an axis.
const STEPS: usize = 4;
/// An axis of litres is no shorter.
const LEAST_LITRES: f64 = 10.0;
/// Days are drawn over so many at least.
const FEWEST_DAYS: f64 = 10.0;
/// From the end of an axis to its name, across and down.
const TO_NAME: (f64, f64) = (26.0, 22.0);

/// A calendar that is drawn.
struct Drawn<'a> {
    name: String,
    score: &'a Score,
    changes: Vec<(u32, f64)>,
}

impl Drawn<'_> {
    /// Blue what keeps what was asked for, dark the changes as written, grey what falls short.
    fn colour(&self, is_planned: bool) -> Colour {
        match (is_planned, self.score.is_kept) {
            (true, _) => INK,
            (false, true) => CHANGE,
            (false, false) => MUTED,
        }
    }
}

/// The chart of a search; `plan` is the run of the changes as written.
pub fn figure(plan: &manifest::Story<'_>, found: &Found) -> Figure {
    let story = Story {
        run: &plan.outcome.run,
        case: plan.case,
        milestones: &plan.outcome.milestones,
        verdict: &plan.outcome.verdict,
        forecast: None,
    };
    let weekly = Weekly::usual(&story);
    let mut sheet = Sheet::new(
        "choices",
        &words::titles(plan.case, found),
        &words::sentences(found),
    );
    let all = drawn(plan, found);
    trade_off(&mut sheet, found, plan.case.input.last_day, &all);
    rows::draw(&mut sheet, &weekly, &all);
    sheet.figure
}

/// The changes as written, then the choices.
fn drawn<'a>(plan: &manifest::Story<'_>, found: &'a Found) -> Vec<Drawn<'a>> {
    let planned = Drawn {
        name: "as written".into(),
        score: &found.planned,
        changes: plan.case.input.changes(),
    };
    let choice = |(place, choice): (usize, &'a Choice)| Drawn {
        name: format!("choice {}", place + 1),
        score: &choice.score,
        changes: choice.changes.clone(),
    };
    let choices = found.choices.iter().enumerate().map(choice);
    std::iter::once(planned).chain(choices).collect()
}

/// Litres across, up the day by which as many tanks are ready as must be.
fn trade_off(sheet: &mut Sheet, found: &Found, last_day: u32, all: &[Drawn<'_>]) {
    let of_100 = found.terms.keep_of_100;
    let day = |one: &Drawn<'_>| match one.score.curve.day_of(of_100) {
        Some(day) => f64::from(day),
        None => later(last_day),
    };
    let days: Vec<f64> = all.iter().map(day).collect();
    let litres = all.iter().map(|one| one.score.litres);
    let across = from_zero(litres, LEAST_LITRES, STEPS);
    let up = up_to_the_end(&days, last_day, days_up);
    let frame = Rect::new(LEFT, EDGES.0, RIGHT, EDGES.1);
    let panel = Panel::new(frame, across.clone(), up);
    let title = format!("Day by which {of_100} of 100 are ready, against litres");
    let at = sheet.panel(panel, &title, "", TITLE_UP);
    name_litres(sheet, at, &across);
    let points: Vec<(f64, f64)> = all
        .iter()
        .zip(days)
        .map(|(one, day)| (one.score.litres, day))
        .collect();
    for (place, (one, &point)) in all.iter().zip(&points).enumerate() {
        sheet.mark(at, point, Form::Disc, one.colour(place == 0));
    }
    for (one, point) in all.iter().zip(points) {
        sheet.words_at(at, point, vec![bold(&one.name, INK)]);
    }
}

/// The days that are met, and at least so many that a day more or less is not drawn as a gulf.
fn days_up(known: &[f64]) -> Axis {
    let most = known.iter().copied().fold(FEWEST_DAYS, f64::max);
    let least = known.iter().copied().fold(most - FEWEST_DAYS, f64::min);
    around((least - 1.0).max(0.0), most, STEPS)
}

fn name_litres(sheet: &mut Sheet, panel: usize, across: &Axis) {
    sheet.ticks_below(panel, across);
    let (x, y) = (RIGHT + TO_NAME.0, EDGES.1 + TO_NAME.1);
    sheet.say(vec![plain("L changed", MUTED)], Anchor::Start, x, y);
}
