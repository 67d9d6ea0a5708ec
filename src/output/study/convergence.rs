//! `convergence.csv`: how sure the study was as it grew.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::sizes::{DONE_BELOW, Size};
use crate::output::csv::Head;
use crate::output::table::{Cell, Table};

use super::{Story, per_milestone};

const FILE: &str = "convergence.csv";

/// One row per milestone and number of members.
pub fn table(story: &Story<'_>) -> Table {
    let row = |found: &Found, size: &Size| row(story, found, size);
    per_milestone::table((FILE, heads()), story, |found| &found.sizes, row)
}

fn row(story: &Story<'_>, found: &Found, size: &Size) -> Vec<Cell> {
    vec![
        Cell::words_of(found.milestone.name),
        Cell::Count(size.members),
        Cell::Number(size.widest),
        Cell::words_of(&story.findings.factors[size.factor].name),
        Cell::words_of(if size.is_done() { "yes" } else { "no" }),
    ]
}

fn heads() -> Vec<Head> {
    vec![
        Head::plain("milestone", "what is looked at", "study file"),
        Head::plain("members", "members so far", "count"),
        Head::new(
            "widest_interval",
            "1",
            "widest interval of 95 of 100: of total shares, of mean effects over the largest, or of rank correlations",
            "a hundred replicates; of rank correlations Fisher's interval",
        ),
        Head::plain("input", "the input, or group, it is about", "study file"),
        Head::plain(
            "done",
            "yes when narrower than it must be",
            &format!("below {DONE_BELOW}"),
        ),
    ]
}
