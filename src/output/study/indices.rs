//! `indices.csv`: one row per number about an input.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Index;
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

use super::words::takes_settings;
use super::{Story, per_milestone};

const FILE: &str = "indices.csv";

/// One row per number about an input.
pub fn table(story: &Story<'_>) -> Table {
    let row = |found: &Found, index: &Index| row(story, found, index);
    per_milestone::table((FILE, heads()), story, |found| &found.indices, row)
}

fn row(story: &Story<'_>, found: &Found, index: &Index) -> Vec<Cell> {
    let factor = |at: usize| &story.findings.factors[at];
    let other = index.other.map(|at| Cell::words_of(&factor(at).name));
    let unit = match index.kind.is_in_units() {
        true => found.milestone.unit,
        false => "1",
    };
    let [low, high] = [0, 1].map(|end| Cell::number_or_empty(index.interval.map(|ends| ends[end])));
    vec![
        Cell::words_of(found.milestone.name),
        Cell::words_of(index.kind.method()),
        Cell::words_of(index.kind.word()),
        Cell::words_of(&factor(index.factor).name),
        other.unwrap_or(Cell::Empty),
        Cell::words_of(factor(index.factor).group.word()),
        Cell::words_of(unit),
        Cell::Number(index.value),
        low,
        high,
        Cell::Number(found.share_beyond()),
        Cell::Count(story.findings.counts.members - story.findings.counts.left_out),
        Cell::words_of(is_a(story, index.factor)),
    ]
}

/// What an input is: settings are a choice, and stand in the order of the study file.
fn is_a(story: &Story<'_>, factor: usize) -> &'static str {
    match story.study.inputs.get(factor) {
        None => "group",
        Some(_) if takes_settings(story.study, factor) => "choice",
        Some(_) => "quantity",
    }
}

fn heads() -> Vec<Head> {
    let of_row = |name: &str, meaning: &str, derived: &str| {
        Head::new(name, "that of the row", meaning, derived)
    };
    vec![
        Head::plain("milestone", "what is looked at", "study file"),
        Head::plain(
            "method",
            "what the number is worked out by",
            "list of the program",
        ),
        Head::plain(
            "kind",
            "what the number tells: first, total, together (total less first) and second are shares of the variance",
            "list of the program",
        ),
        Head::plain(
            "input",
            "the input, or group of inputs, it is about",
            "study file",
        ),
        Head::plain("other", "the second input of a pair", "study file"),
        Head::plain("group", "what the input belongs to", "list of the program"),
        Head::plain("unit", "unit of the number", "list of the program"),
        of_row("value", "the number", "all members that did not fail"),
        of_row(
            "low",
            "lower end of where the number lies 95 of 100 times; of a range the least output; of pawn_by_chance of inputs that do nothing",
            "a hundred replicates; of rank correlations Fisher's interval; of pawn_by_chance a hundred inputs that do nothing",
        ),
        of_row("high", "upper end; of a range the most", "as low"),
        Head::new(
            "beyond",
            "1",
            "share of runs not ready within the run: they count as the day after the last",
            "all runs",
        ),
        Head::plain("members", "members that did not fail", "count"),
        Head::plain(
            "input_is",
            "quantity, group, or choice: of a choice, such as the scenario, ranks, effects and rises hang on the order in which the study file lists its settings; shares, distances and ranges do not",
            "study file",
        ),
    ]
}
