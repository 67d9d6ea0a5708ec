//! What the last day before ready waited for: one square for each of 100 plausible tanks.

use crate::analysis::ensemble::member::Told;
use crate::analysis::forecast::Forecast;
use crate::analysis::ready::{OxidationStep, Ripening, Waiting};
use crate::output::waiting::waited_words;

use super::figure::{Anchor, Shape, Span, width_of};
use super::hundred::{shared_out, told};
use super::ready_names::places;
use super::rect::Rect;
use super::sheet::{LEFT, Sheet, bold, plain};
use super::signs::corners;
use super::style::{AMMONIA, Colour, INK, LIGHT, MUTED, NITRITE, Pen, READY, SENTENCE, WHITE};
use super::weeks_forecast_words::ever;
use super::words::list;

/// Upper edge of the squares.
const TOP: f64 = 574.0;
/// Side of a square, and from one to the next, pixels.
const SIDE: f64 = 17.2;
const STRIDE: f64 = 18.8;
/// Rows the squares stand in, filled column by column.
const ROWS: usize = 2;
/// Room for a sample before its name, pixels.
const SAMPLE: f64 = 18.0;
/// From one row of names to the next, pixels.
const NAME_ROW: f64 = 18.0;

/// Most reasons of empty squares that are named, the most frequent first.
const MOST_NAMED: usize = 3;

/// Squares that share a reason.
struct Group {
    reason: Reason,
    squares: usize,
}

/// What a square stands for.
#[derive(Clone, Copy, PartialEq)]
enum Reason {
    /// Ready, after waiting for this; or from the first day.
    Ready(Option<Waiting>),
    /// Not ready by the last day.
    Late,
}

/// Draws squares and names.
pub fn cells(sheet: &mut Sheet, forecast: &Forecast) {
    let groups = groups(forecast);
    let title = vec![
        Span::new(
            "What the last day waited for",
            super::fonts::Face::SemiBold,
            SENTENCE,
            INK,
        ),
        plain(&unit_words(forecast), MUTED),
    ];
    sheet.say(title, Anchor::Start, LEFT, TOP - 17.0);
    let mut number = 0;
    for group in &groups {
        for _ in 0..group.squares {
            let (column, row) = (number / ROWS, number % ROWS);
            let (x, y) = (LEFT + STRIDE * column as f64, TOP + STRIDE * row as f64);
            draw(sheet, group.reason, &Rect::new(x, y, x + SIDE, y + SIDE));
            number += 1;
        }
    }
    names(sheet, &groups, forecast.curve.last_day);
}

/// What an empty square means, and what those tanks still wait for.
fn unit_words(forecast: &Forecast) -> String {
    let late = by_reason(forecast, 100 - ever(&forecast.curve).reached(), |told| {
        told.ready.day.is_none()
    });
    let waiting = late
        .iter()
        .filter_map(|&(waited, squares)| Some((waited?, squares)));
    let named: Vec<String> = waiting
        .take(MOST_NAMED)
        .enumerate()
        .map(|(at, (waiting, squares))| {
            let wait = if at == 0 { " wait" } else { "" };
            format!("{squares}{wait} for {}", waited_words(waiting))
        })
        .collect();
    let one = "one square per plausible tank";
    match named.is_empty() {
        true => one.to_string(),
        false => format!("{one}; of those not ready, {}", list(&named)),
    }
}

/// The squares of the ready tanks by reason, the most frequent first, then those of the others.
fn groups(forecast: &Forecast) -> Vec<Group> {
    let ready = ever(&forecast.curve).reached();
    let reasons = by_reason(forecast, ready, |told| told.ready.day.is_some());
    let shown = reasons.into_iter().map(|(waited, squares)| Group {
        reason: Reason::Ready(waited),
        squares,
    });
    let late = Group {
        reason: Reason::Late,
        squares: 100 - ready,
    };
    let all = shown.chain([late]);
    all.filter(|group| group.squares > 0).collect()
}

/// So many squares shared out over what some members waited for, the most frequent first.
fn by_reason(
    forecast: &Forecast,
    squares: usize,
    counts: impl Fn(&Told) -> bool,
) -> Vec<(Option<Waiting>, usize)> {
    let reasons = forecast.curve.waited_for.iter().map(|(waited, _)| *waited);
    let count = |waited| {
        let same = |told: &&Told| counts(told) && told.ready.waited_for == waited;
        (waited, told(forecast).filter(same).count())
    };
    let mut counted: Vec<(Option<Waiting>, usize)> = reasons.map(count).collect();
    counted.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    let all: Vec<usize> = counted.iter().map(|(_, count)| *count).collect();
    let shares = counted.iter().zip(shared_out(&all, squares));
    let some = shares.map(|(&(waited, _), squares)| (waited, squares));
    some.filter(|(_, squares)| *squares > 0).collect()
}

/// A square: full for a limit, with a hole for a capacity, with a bar for a limit broken by animals, empty
/// when not ready.
fn draw(sheet: &mut Sheet, reason: Reason, space: &Rect) {
    let Reason::Ready(waited) = reason else {
        let mut outline = corners(&space.grown(-0.5));
        outline.push(outline[0]);
        return sheet.shape(Shape::Path(outline, Pen::hair(MUTED)));
    };
    sheet.shape(Shape::Fill(corners(space), colour_of(waited), 0.9));
    let (width, height) = (space.width(), space.height());
    let inner = match waited {
        Some(Waiting::Capacity(_)) => space.grown(-0.3 * width),
        Some(Waiting::WithAnimals(_)) => {
            let (top, bottom) = (space.top + 0.4 * height, space.bottom - 0.4 * height);
            Rect::new(space.left, top, space.right, bottom)
        }
        _ => return,
    };
    sheet.shape(Shape::Fill(corners(&inner), WHITE, 1.0));
}

fn colour_of(waited: Option<Waiting>) -> Colour {
    match waited {
        None => READY,
        Some(Waiting::Capacity(OxidationStep::Ammonia)) => AMMONIA,
        Some(Waiting::Capacity(OxidationStep::Nitrite)) => NITRITE,
        Some(Waiting::Limit(limit) | Waiting::WithAnimals(limit)) => match limit {
            Ripening::TotalAmmonia => AMMONIA,
            Ripening::FreeAmmonia => LIGHT,
            Ripening::Nitrite => NITRITE,
        },
    }
}

/// Names under the squares, each with a sample: where its squares begin, or further on where names are wide.
fn names(sheet: &mut Sheet, groups: &[Group], last_day: u32) {
    let spans: Vec<Vec<Span>> = groups
        .iter()
        .map(|group| name_of(group, last_day))
        .collect();
    let widths: Vec<f64> = spans.iter().map(|name| SAMPLE + width_of(name)).collect();
    let mut first = 0;
    let starts: Vec<f64> = groups
        .iter()
        .map(|group| {
            let column = first / ROWS;
            first += group.squares;
            LEFT + STRIDE * column as f64
        })
        .collect();
    for ((group, name), (x, row)) in groups.iter().zip(spans).zip(places(&starts, &widths)) {
        let baseline = TOP + STRIDE * ROWS as f64 + 17.0 + NAME_ROW * row as f64;
        let sample = Rect::new(x, baseline - 10.0, x + 11.0, baseline + 1.0);
        draw(sheet, group.reason, &sample);
        sheet.say(name, Anchor::Start, x + SAMPLE, baseline);
    }
}

fn name_of(group: &Group, last_day: u32) -> Vec<Span> {
    let words = match group.reason {
        Reason::Ready(Some(waited)) => waited_words(waited).to_string(),
        Reason::Ready(None) => "ready from the first day".to_string(),
        Reason::Late => format!("not ready by day {last_day}"),
    };
    vec![bold(&words, INK), plain(&group.squares.to_string(), MUTED)]
}
