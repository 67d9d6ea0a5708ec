//! What the last day before ready waited for: one square for each of 100 plausible tanks.

use crate::analysis::ensemble::member::Told;
use crate::analysis::forecast::Forecast;
use crate::analysis::ready::{OxidationStep, Ripening, Waiting};

use super::figure::{Anchor, Shape, Span, width_of};
use super::hundred::told;
use super::rect::Rect;
use super::sheet::{LEFT, Sheet, bold, plain};
use super::signs::corners;
use super::style::{AMMONIA, Colour, INK, LIGHT, MUTED, NITRITE, Pen, READY, SENTENCE, WHITE};
use super::weeks_forecast_words::ever;
use super::weeks_words::waited_words;
use super::words::list;

/// Upper edge of the squares.
const TOP: f64 = 574.0;
/// Side of a square, and from one to the next, pixels.
const SIDE: f64 = 17.2;
const STRIDE: f64 = 18.8;
/// Rows the squares stand in, filled column by column.
const ROWS: usize = 2;
/// Right edge that names may reach.
const RIGHT_EDGE: f64 = 1136.0;
/// Room between two names, and between a sample and its name, pixels.
const BETWEEN: f64 = 24.0;
const SAMPLE: f64 = 18.0;
/// From one row of names to the next, pixels.
const NAME_ROW: f64 = 18.0;

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
    let late = told(forecast).filter(|told| told.ready.day.is_none());
    let waited: Vec<Waiting> = late.filter_map(|told| told.ready.waited_for).collect();
    let mut counts: Vec<(Waiting, usize)> = Vec::new();
    for one in waited {
        match counts.iter_mut().find(|(known, _)| *known == one) {
            Some((_, count)) => *count += 1,
            None => counts.push((one, 1)),
        }
    }
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    let all: Vec<usize> = counts.iter().map(|(_, count)| *count).collect();
    let squares = shared_out(&all, 100 - ever(&forecast.curve).of_100());
    let named = counts
        .iter()
        .zip(&squares)
        .filter(|(_, squares)| **squares > 0);
    let named: Vec<String> = named
        .map(|((waiting, _), squares)| format!("{squares} for {}", waited_words(*waiting)))
        .collect();
    let one = "one square per plausible tank";
    match named.is_empty() {
        true => one.to_string(),
        false => format!("{one}; of the empty ones wait {}", list(&named)),
    }
}

fn groups(forecast: &Forecast) -> Vec<Group> {
    let ready = ever(&forecast.curve).of_100();
    let mut counts: Vec<(Option<Waiting>, usize)> = Vec::new();
    for &(waited, _) in &forecast.curve.waited_for {
        let same = |told: &&_| is_ready_after(told, waited);
        counts.push((waited, told(forecast).filter(same).count()));
    }
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    let all: Vec<usize> = counts.iter().map(|(_, count)| *count).collect();
    let squares = shared_out(&all, ready);
    let shown = counts
        .iter()
        .zip(squares)
        .map(|((waited, _), squares)| Group {
            reason: Reason::Ready(*waited),
            squares,
        });
    let late = Group {
        reason: Reason::Late,
        squares: 100 - ready,
    };
    shown
        .chain([late])
        .filter(|group| group.squares > 0)
        .collect()
}

fn is_ready_after(told: &Told, waited: Option<Waiting>) -> bool {
    told.ready.day.is_some() && told.ready.waited_for == waited
}

/// So many squares shared out over counts, by largest remainder; the first of equals gets more.
fn shared_out(counts: &[usize], squares: usize) -> Vec<usize> {
    let all: usize = counts.iter().sum();
    if all == 0 {
        return vec![0; counts.len()];
    }
    let mut shares: Vec<usize> = counts.iter().map(|count| count * squares / all).collect();
    let mut order: Vec<usize> = (0..counts.len()).collect();
    order.sort_by_key(|&n| std::cmp::Reverse(counts[n] * squares % all));
    let missing = squares - shares.iter().sum::<usize>();
    for &n in order.iter().take(missing) {
        shares[n] += 1;
    }
    shares
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

/// Where names of these widths stand, with their row: at their starts, moved right off their neighbours and
/// back from the edge; in two rows from the left where they are too wide together.
fn places(starts: &[f64], widths: &[f64]) -> Vec<(f64, usize)> {
    let together: f64 = widths.iter().map(|width| width + BETWEEN).sum();
    if together > RIGHT_EDGE - LEFT {
        let half = widths.len().div_ceil(2);
        let mut x = LEFT;
        let each = widths.iter().enumerate().map(|(n, width)| {
            if n == half {
                x = LEFT;
            }
            let place = x;
            x += width + BETWEEN;
            (place, usize::from(n >= half))
        });
        return each.collect();
    }
    let mut xs = starts.to_vec();
    for n in 1..xs.len() {
        xs[n] = xs[n].max(xs[n - 1] + widths[n - 1] + BETWEEN);
    }
    let mut edge = RIGHT_EDGE;
    for (x, width) in xs.iter_mut().zip(widths).rev() {
        *x = x.min(edge - width);
        edge = *x - BETWEEN;
    }
    xs.into_iter().map(|x| (x, 0)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn squares_are_shared_out_by_the_largest_remainder() {
        // exact shares 57.1, 28.6 and 14.3 of 100
        assert_eq!(shared_out(&[4, 2, 1], 100), [57, 29, 14]);
        assert_eq!(shared_out(&[1, 1, 1], 100), [34, 33, 33]);
        assert_eq!(shared_out(&[0, 0], 80), [0, 0]);
    }

    #[test]
    fn names_stand_at_their_squares_and_move_only_when_they_must() {
        let placed = places(&[64.0, 400.0, 420.0], &[100.0, 100.0, 100.0]);
        assert_eq!(placed, [(64.0, 0), (400.0, 0), (524.0, 0)]);
        let crowded = places(&[64.0, 1000.0, 1010.0], &[100.0, 100.0, 100.0]);
        assert_eq!(crowded, [(64.0, 0), (912.0, 0), (1036.0, 0)]);
    }
}
