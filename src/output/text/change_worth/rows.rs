//! One row per change: the days, then each figure for itself.

use crate::analysis::case::Case;
use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::effects::{Effects, JUDGED};
use crate::output::change_worth::words::{moving_of_100, places};
use crate::output::chart::words::{number, signed};
use crate::output::text::{Page, Tone};
use crate::output::when::day_in_words;

/// Rows that fit beside all the rest, and where days away are told too.
const MOST_ROWS: usize = 12;
const MOST_WITH_AWAY: usize = 8;
/// Widths of the columns: day, share, days later, tanks that move, then a column per figure, then whether it may go.
const DAY: usize = 20;
const SHARE: usize = 6;
const LATER: usize = 14;
const MOVE: usize = 6;
const FIGURE: [usize; JUDGED.len()] = [8, 8, 6, 6, 6];
const GOES: usize = 6;
const HEADS: [&str; JUDGED.len()] = ["ammonia", "nitrite", "NH3 h", "lit h", "KH"];
/// Where a figure moves by too little to tell.
const AS_PLANNED: &str = "·";
/// Fewer days are shown as none.
const SHOWN_DAYS: f64 = 0.05;
/// What stands before days that may be chance.
const UNCLEAR: &str = "~";

/// The changes in the order of the calendar: all of them, or those that are missed most.
pub fn table(page: &mut Page, case: &Case, worth: &ChangeWorth) {
    let words = format!(
        "each left out alone, on the same {} plausible tanks; day {} counts as the latest",
        worth.common.members, case.input.last_day
    );
    page.block("Changes", Tone::Plain, words);
    let heads = HEADS.map(String::from);
    page.line(
        Tone::Faint,
        columns("", "share", ["days later", "move"], &heads, "goes"),
    );
    for place in shown(worth) {
        page.line(Tone::Plain, row(case, worth, place));
    }
    let more = worth.changes.len().saturating_sub(most_rows(worth));
    let more = match more {
        0 => String::new(),
        more => format!("{more} that are missed less: changes.csv; "),
    };
    page.line(
        Tone::Faint,
        format!(
            "{more}days: mean ± standard error, {UNCLEAR} where that may be chance; move: tanks of 100 whose ready day does; ammonia, nitrite: peaks, mg N/L; \
             NH3 h: over its limit; lit h: bright light on ammonia; KH: lowest, dKH; {AS_PLANNED} too little to tell"
        ),
    );
}

fn most_rows(worth: &ChangeWorth) -> usize {
    match worth.absence {
        Some(_) => MOST_WITH_AWAY,
        None => MOST_ROWS,
    }
}

/// The places of the rows that fit, in the order of the calendar.
fn shown(worth: &ChangeWorth) -> Vec<usize> {
    let mut places: Vec<usize> = worth
        .drop
        .order()
        .into_iter()
        .rev()
        .take(most_rows(worth))
        .collect();
    places.sort_unstable();
    places
}

fn row(case: &Case, worth: &ChangeWorth, place: usize) -> String {
    let (change, effects) = (&worth.changes[place], &worth.alone[place]);
    let share = format!("{} %", number(100.0 * change.share, 0));
    let goes = if worth.drop.drops(place) { "yes" } else { "no" };
    let moves = number(moving_of_100(&effects.ready), 0);
    columns(
        &day_in_words(case.filled_on, change.day()),
        &share,
        [&days(effects), &moves],
        &figures(effects),
        goes,
    )
}

fn days(effects: &Effects) -> String {
    let is_sure = effects.ready.is_clear() || effects.days_later().abs() < SHOWN_DAYS;
    let unclear = if is_sure { "" } else { UNCLEAR };
    let error = number(effects.ready.standard_error_days, 1);
    format!("{unclear}{} ± {error}", signed(effects.days_later(), 1))
}

fn figures(effects: &Effects) -> [String; JUDGED.len()] {
    std::array::from_fn(|at| {
        let on = &effects.judged[at];
        let mean = on.effect.mean;
        match mean.abs() >= on.figure.told_from {
            true => signed(mean, places(on.figure)),
            false => AS_PLANNED.into(),
        }
    })
}

fn columns(
    day: &str,
    share: &str,
    [later, moves]: [&str; 2],
    figures: &[String],
    goes: &str,
) -> String {
    let figures = figures.iter().zip(FIGURE);
    let figures: String = figures
        .map(|(cell, width)| format!("{cell:>width$}"))
        .collect();
    format!("{day:DAY$}{share:>SHARE$}{later:>LATER$}{moves:>MOVE$}{figures}{goes:>GOES$}")
}
