//! What each lever does to the ready day: one row a lever, a bar of days to either side, and what it takes.
//!
//! ```text
//! levers          rows, axis and notes placed; this file
//! lever_bars      a row's bar, its error and range, its number
//! lever_columns   what stands beside the bars
//! lever_words     title and sentence
//! ```

use crate::analysis::case::Case;
use crate::analysis::levers::{Levers, Pulled};
use crate::output::lever_words::{night_air, seeding};

use super::axis::{self, Axis};
use super::figure::{Anchor, Figure};
use super::key::Key;
use super::lever_bars::{BAR_WIDTH, ERROR, RANGE, bar, plan_mark};
use super::lever_columns::{RIGHT_END, cells, heads, plan_cells};
use super::lever_words::{description, sentences, titles};
use super::notes::{Note, height_of, write};
use super::row_scale::{RowScale, TO_TICKS};
use super::sheet::{LEFT, Sheet, bold, plain, small};
use super::style::{CHANGE, INK, MUTED, Pen};

/// Upper edge of the rows.
const TOP: f64 = 150.0;
/// Left and right edge of the bars' scale; numbers reach [`BESIDE`] past them.
const ACROSS: (f64, f64) = (348.0, 640.0);
/// Room for a number past the scale, pixels.
pub const BESIDE: f64 = 44.0;
/// Height of a row where there is room, and the least, pixels.
const ROW: f64 = 41.0;
const LEAST_ROW: f64 = 22.0;
/// Base line of the last note, and from the rows to the first: room for the names of the scale.
const LAST_NOTE: f64 = 876.0;
const UNDER_ROWS: f64 = 68.0;
/// Steps of the scale of days, and how far it reaches to either side at least.
const STEPS: usize = 6;
const LEAST_DAYS: f64 = 1.0;

/// The chart.
pub fn figure(case: &Case, levers: &Levers) -> Figure {
    let last_day = case.input.last_day;
    let mut sheet = Sheet::new("levers", &titles(levers), &sentences(levers, last_day));
    let thick = Pen::hair(CHANGE).wide(BAR_WIDTH);
    sheet.key(&[
        Key::Line(thick, "mean of all pairs of tanks"),
        Key::Line(ERROR, "plus and minus its standard error"),
        Key::Line(RANGE, "10 to 90 of 100 pairs"),
    ]);
    let laid = Laid::out(case, levers);
    let row = laid.row;
    let at = scale(&mut sheet, &laid, last_day);
    heads(&mut sheet, TOP - 30.0);
    sheet.say(
        vec![bold("the plan as written", INK)],
        Anchor::Start,
        LEFT,
        base_line(row, 0),
    );
    plan_mark(&mut sheet, at, 0);
    plan_cells(&mut sheet, &levers.plan, base_line(row, 0));
    for (n, pulled) in laid.shown.iter().enumerate() {
        let baseline = base_line(row, n + 1);
        let ink = if pulled.does_something() { INK } else { MUTED };
        sheet.say(
            vec![plain(&pulled.words, ink)],
            Anchor::Start,
            LEFT,
            baseline,
        );
        bar(&mut sheet, at, n + 1, pulled);
        cells(&mut sheet, pulled, &levers.plan, baseline);
    }
    write(&mut sheet, &laid.notes, LAST_NOTE);
    sheet.figure.panels[at].title = description(levers);
    sheet.figure
}

/// What has a row, how tall rows are, and what is said below them.
struct Laid<'a> {
    shown: Vec<&'a Pulled>,
    notes: Vec<Note>,
    row: f64,
}

impl<'a> Laid<'a> {
    /// Every lever has a row if there is room; else those that do nothing are told in words.
    fn out(case: &Case, levers: &'a Levers) -> Laid<'a> {
        let mut notes = notes(case, levers);
        let shown: Vec<&Pulled> = levers.pulled.iter().collect();
        let row = row_of(shown.len(), &notes);
        if row >= LEAST_ROW {
            return Laid { shown, notes, row };
        }
        let (shown, idle): (Vec<&Pulled>, Vec<&Pulled>) = shown
            .into_iter()
            .partition(|pulled| pulled.does_something());
        let idle: Vec<&str> = idle.iter().map(|pulled| pulled.words.as_str()).collect();
        notes.insert(0, Note::new("Does nothing", idle.join("; ")));
        let row = row_of(shown.len(), &notes);
        Laid { shown, notes, row }
    }
}

/// Height of a row under that many levers, the plan and the notes.
fn row_of(levers: usize, notes: &[Note]) -> f64 {
    let room = LAST_NOTE - height_of(notes) - UNDER_ROWS - TOP;
    (room / (levers + 1) as f64).min(ROW)
}

fn base_line(row: f64, n: usize) -> f64 {
    TOP + row * (n as f64 + 0.5) + 4.5
}

fn notes(case: &Case, levers: &Levers) -> Vec<Note> {
    let mut notes = vec![Note::new("Seeding", seeding(case, levers.last_day_to_seed))];
    let air = levers.shortest_air.as_ref();
    notes.extend(air.map(|air| Note::new("Night air", night_air(air, case))));
    notes
}

/// The empty scale, and which way is which.
fn scale(sheet: &mut Sheet, laid: &Laid<'_>, last_day: u32) -> usize {
    let (left, right) = ACROSS;
    let name = format!("days by which the ready day moves, day {last_day} counted as the latest");
    let scale = RowScale {
        across: ACROSS,
        top: TOP,
        tall: laid.row,
        rows: laid.shown.len() + 1,
        right_end: RIGHT_END,
        axis: days(&laid.shown),
        name: &name,
    };
    let same = vec![small("· as in the plan", MUTED)];
    sheet.say(same, Anchor::End, RIGHT_END, scale.bottom() + TO_TICKS);
    let (later, sooner) = (bold("← days later", INK), bold("days sooner →", INK));
    sheet.say(vec![later], Anchor::Start, left - BESIDE, TOP - 12.0);
    sheet.say(vec![sooner], Anchor::End, right, TOP - 12.0);
    scale.draw(sheet)
}

/// Days lost to the left and gained to the right, told without a sign.
fn days(shown: &[&Pulled]) -> Axis {
    let reach = shown.iter().flat_map(|pulled| {
        let paired = &pulled.paired;
        let error = paired.standard_error_days;
        let [low, high] = paired.range_days;
        [
            low,
            high,
            paired.mean_days - error,
            paired.mean_days + error,
        ]
    });
    let ends = (-LEAST_DAYS, LEAST_DAYS);
    let (low, high) = reach.fold(ends, |(low, high), days| (low.min(days), high.max(days)));
    let mut axis = axis::around(low, high, STEPS);
    for tick in &mut axis.ticks {
        tick.words = tick.words.trim_start_matches('−').to_string();
    }
    axis
}
