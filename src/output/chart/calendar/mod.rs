//! Calendars that were found: the trade-off between litres and the ready day, and each calendar along the weeks.

mod rows;
mod words;

use crate::analysis::calendar::Found;
use crate::analysis::calendar::choice::Choice;
use crate::analysis::calendar::score::Score;
use crate::analysis::calendar::wish::Least;
use crate::output::manifest;

use super::Story;
use super::axis::{Axis, around, from_zero};
use super::figure::{Anchor, Figure, Form, Panel};
use super::rect::Rect;
use super::sheet::{LEFT, RIGHT, Sheet, bold, plain};
use super::style::{CHANGE, Colour, INK, MUTED};
use super::weekly::Weekly;

/// Upper edge of the panel of the trade-off, from its lower edge to the rows, and from it up to its title.
const TOP: f64 = 132.0;
const TO_ROWS: f64 = 74.0;
const TITLE_UP: f64 = 16.0;
/// Most steps of an axis.
const STEPS: usize = 4;
/// An axis of litres, and of changes, is no shorter.
const LEAST_LITRES: f64 = 10.0;
const LEAST_VISITS: f64 = 4.0;
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

/// What there should be least of across, or litres; up the mean ready day, by which calendars are told apart.
fn trade_off(sheet: &mut Sheet, found: &Found, last_day: u32, all: &[Drawn<'_>]) {
    let days: Vec<f64> = all.iter().map(|one| one.score.mean_ready_day).collect();
    let amount = match found.trying.least {
        Least::Visits => Amount {
            of: |score| score.visits as f64,
            words: "changes",
            least: LEAST_VISITS,
        },
        Least::Litres | Least::ReadyDay => Amount {
            of: |score| score.litres,
            words: "L changed",
            least: LEAST_LITRES,
        },
    };
    let across = from_zero(
        all.iter().map(|one| (amount.of)(one.score)),
        amount.least,
        STEPS,
    );
    let frame = Rect::new(LEFT, TOP, RIGHT, rows::top(all.len()) - TO_ROWS);
    let panel = Panel::new(frame, across.clone(), days_up(&days));
    let title = format!("Mean ready day, against {}", amount.words);
    let unit = format!("later than day {last_day} counted as the day after it");
    let at = sheet.panel(panel, &title, &unit, TITLE_UP);
    name_across(sheet, at, &across, amount.words);
    let points: Vec<(f64, f64)> = all
        .iter()
        .zip(days)
        .map(|(one, day)| ((amount.of)(one.score), day))
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

/// What stands across.
struct Amount {
    of: fn(&Score) -> f64,
    words: &'static str,
    /// An axis of it is no shorter.
    least: f64,
}

fn name_across(sheet: &mut Sheet, panel: usize, across: &Axis, words: &str) {
    sheet.ticks_below(panel, across);
    let (x, y) = (
        RIGHT + TO_NAME.0,
        sheet.figure.panels[panel].frame.bottom + TO_NAME.1,
    );
    sheet.say(vec![plain(words, MUTED)], Anchor::Start, x, y);
}
