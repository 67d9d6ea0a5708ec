//! Beside the bars: litres, gas, lowest oxygen, tanks that are ready, and the limit that moved.

use crate::analysis::levers::Pulled;
use crate::analysis::levers::paired::Moved;
use crate::analysis::levers::price::Price;
use crate::output::lever_words::{AS_PLANNED, price};
use crate::output::waiting::waited_words_briefly;

use super::figure::{Anchor, Span};
use super::sheet::{Sheet, bold, plain};
use super::style::{INK, MUTED};

/// Right edges of the numbers.
const EDGES: [f64; 4] = [714.0, 768.0, 848.0, 904.0];
/// Right edge of the table.
pub const RIGHT_END: f64 = 1136.0;
/// Names of the columns, each over its unit.
const HEADS: [[&str; 2]; 4] = [
    ["litres", "in all"],
    ["gas", "g"],
    ["lowest O₂", "mg/L"],
    ["ready", "of 100"],
];
const MOVED: [&str; 2] = ["last to come right", "of 100, plan → lever"];

/// Names of the columns, the first line on a base line.
pub fn heads(sheet: &mut Sheet, baseline: f64) {
    let columns = HEADS.into_iter().zip(EDGES);
    for ([name, unit], x) in columns.chain([(MOVED, RIGHT_END)]) {
        sheet.say(vec![bold(name, INK)], Anchor::End, x, baseline);
        sheet.say(vec![plain(unit, MUTED)], Anchor::End, x, baseline + 18.0);
    }
}

/// What the plan takes.
pub fn plan_cells(sheet: &mut Sheet, plan: &Price, baseline: f64) {
    row(sheet, price(plan, None), baseline, |words| bold(words, INK));
}

/// What a lever takes, and which limit it moved; a dot where it is as in the plan.
pub fn cells(sheet: &mut Sheet, pulled: &Pulled, plan: &Price, baseline: f64) {
    let ink = if pulled.does_something() { INK } else { MUTED };
    row(sheet, price(&pulled.price, Some(plan)), baseline, |words| {
        plain(words, ink)
    });
    let moved = pulled.paired.moved.filter(|_| pulled.does_something());
    let words = moved.and_then(moved_words);
    let words = words.unwrap_or(AS_PLANNED.to_string());
    sheet.say(vec![plain(&words, ink)], Anchor::End, RIGHT_END, baseline);
}

fn row(sheet: &mut Sheet, words: [String; 4], baseline: f64, span: impl Fn(&str) -> Span) {
    for (words, x) in words.iter().zip(EDGES) {
        sheet.say(vec![span(words)], Anchor::End, x, baseline);
    }
}

/// `nitrite 78 → 70`; nothing where both round to the same.
fn moved_words(moved: Moved) -> Option<String> {
    let [before, after] =
        [moved.of_100_before, moved.of_100_after].map(|of_100| format!("{of_100:.0}"));
    let waited = waited_words_briefly(moved.waiting);
    (before != after).then(|| format!("{waited} {before} → {after}"))
}
