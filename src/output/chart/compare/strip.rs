//! The milestones of all plans as a strip of numbers under the panels: the best of a column is bold and
//! underlined, the worst has a dashed line.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::lines::{Line, Standing};
use crate::analysis::compare::value::Value;
use crate::output::chart::figure::{Anchor, Label, Shape, Span};
use crate::output::chart::fonts::Face;
use crate::output::chart::sheet::{LEFT, Sheet, bold, fitting, plain, small};
use crate::output::chart::style::{BASE, Dash, GRID, INK, MUTED, NAME, Pen, SENTENCE};
use crate::output::chart::words::{number, short};

/// Room between the panels and the strip.
pub const ABOVE: f64 = 6.0;
/// From the upper rule to the two lines of heads, and to the first row; from row to row.
const HEADS: [f64; 2] = [21.0, 38.0];
const FIRST: f64 = 66.0;
const ROW: f64 = 27.0;
/// From the last row to the notes, and from one to the next.
const NOTE: f64 = 26.0;
const NEXT_NOTE: f64 = 17.0;
/// What the lines and words of the strip mean.
const NOTES: [&str; 2] = [
    "bold and underlined: best in its column; dashed line under it: worst; neither where that may be chance",
    "later: than the last day; visits: days on which somebody has to be there",
];
/// Room for the names of plans.
const NAMES: f64 = 200.0;
/// Right edge of the strip.
const RIGHT: f64 = 1136.0;

/// A column: figure, its head in two lines, right edge.
type Column = (&'static str, [&'static str; 2], f64);

const COLUMNS: [Column; 11] = [
    ("ready_10_of_100_day", ["ready by day", "10 of 100"], 342.0),
    ("ready_50_of_100_day", ["", "50 of 100"], 412.0),
    ("ready_90_of_100_day", ["", "90 of 100"], 482.0),
    ("tan_peak_mg_n_per_l", ["peak ammonia", "mg N/L"], 584.0),
    (
        "free_ammonia_peak_mg_n_per_l",
        ["peak NH₃", "mg N/L"],
        664.0,
    ),
    ("nitrite_peak_mg_n_per_l", ["peak nitrite", "mg N/L"], 752.0),
    ("oxygen_low_mg_per_l", ["worst night", "mg/L O₂"], 842.0),
    ("kh_low_dkh", ["lowest KH", "dKH"], 918.0),
    ("water_changed_l", ["litres", "changed"], 986.0),
    ("visits", ["visits", ""], 1042.0),
    ("nitrate_end_mg_n_per_l", ["nitrate, end", "mg N/L"], RIGHT),
];

/// Height of the strip of so many plans.
pub fn height(rows: usize) -> f64 {
    ABOVE + FIRST + ROW * (rows - 1) as f64 + NOTE + NEXT_NOTE + 4.0
}

/// Draws the strip from a height of the page on.
pub fn draw(sheet: &mut Sheet, comparison: &Comparison<'_>, top: f64) {
    rule(sheet, top, Pen::hair(BASE));
    heads(sheet, comparison.common.members, top);
    let mut baseline = top + FIRST;
    for place in 0..comparison.strategies.len() {
        rule(sheet, baseline - ROW / 2.0 - 4.5, Pen::hair(GRID));
        row(sheet, comparison, place, baseline);
        baseline += ROW;
    }
    baseline += NOTE - ROW;
    for note in NOTES {
        sheet.say(vec![small(note, MUTED)], Anchor::Start, LEFT, baseline);
        baseline += NEXT_NOTE;
    }
}

fn heads(sheet: &mut Sheet, members: usize, top: f64) {
    let [upper, lower] = HEADS.map(|down| top + down);
    let title = vec![Span::new("Milestones", Face::SemiBold, SENTENCE, INK)];
    sheet.say(title, Anchor::Start, LEFT, upper);
    let members = format!("middle of {members} tanks");
    sheet.say(vec![small(&members, MUTED)], Anchor::Start, LEFT, lower);
    for (_, [first, second], right) in COLUMNS {
        sheet.say(vec![bold(first, INK)], Anchor::End, right, upper);
        sheet.say(vec![small(second, MUTED)], Anchor::End, right, lower);
    }
}

fn row(sheet: &mut Sheet, comparison: &Comparison<'_>, place: usize, baseline: f64) {
    let key = std::slice::from_ref(&comparison.strategies[place].key);
    let name = fitting(key, Face::SemiBold, NAME, NAMES);
    sheet.say(vec![bold(&name, INK)], Anchor::Start, LEFT, baseline);
    for (name, _, right) in COLUMNS {
        if let Some(line) = comparison.lines.iter().find(|line| line.name == name) {
            cell(sheet, line, place, (right, baseline));
        }
    }
}

fn rule(sheet: &mut Sheet, y: f64, pen: Pen) {
    let y = y.floor() + 0.5;
    sheet.shape(Shape::Path(vec![(LEFT, y), (RIGHT, y)], pen));
}

fn cell(sheet: &mut Sheet, line: &Line, place: usize, (right, baseline): (f64, f64)) {
    let all: Vec<String> = (0..line.values.len())
        .map(|one| in_words(line, one))
        .collect();
    let (words, standing) = (&all[place], line.standing_as(place, &all));
    let span = match standing {
        Standing::Best => bold(words, INK),
        _ => plain(words, INK),
    };
    let label = Label::new(vec![span], Anchor::End, right, baseline);
    let pen = match standing {
        Standing::Best => Some(Pen::hair(INK)),
        Standing::Worst => Some(Pen {
            dash: Dash::Every(3.0, 2.0),
            ..Pen::hair(MUTED)
        }),
        Standing::Between => None,
    };
    if let Some(pen) = pen {
        let y = baseline.floor() + 3.5;
        sheet.shape(Shape::Path(vec![(label.space.left, y), (right, y)], pen));
    }
    sheet.figure.labels.push(label);
}

fn in_words(line: &Line, place: usize) -> String {
    let has_days = line.unit == "day" || line.name == "visits";
    match line.values[place] {
        Value::Nothing => "–".to_string(),
        Value::Later => "later".to_string(),
        value if has_days => number(value.middle().unwrap_or(0.0), 0),
        value => short(value.middle().unwrap_or(0.0)),
    }
}
