//! What a map says in its title: where the main figure is lowest and highest, and how much.

use crate::analysis::compare::lines::Line;
use crate::analysis::sweep::Sweep;
use crate::output::chart::words::list;
use crate::output::sweep::range;
use crate::output::sweep::words::{unit, with_unit};
use crate::output::text::words::capital;

use super::cells::Numbers;

/// Titles, the longest first.
pub fn titles(sweep: &Sweep, main: usize) -> Vec<String> {
    let sentences = range::sentences(sweep, main).into_iter();
    sentences.map(|words| capital(&words)).collect()
}

/// Sentences, the longest first.
pub fn sentences(sweep: &Sweep, of: &[usize], numbers: &Numbers) -> Vec<String> {
    let members = sweep.common.members;
    let main = with_unit(&sweep.lines[of[0]]);
    let others: Vec<String> = of[1..]
        .iter()
        .map(|&place| in_brackets(&sweep.lines[place]))
        .collect();
    let shown = match (numbers.has_main(), numbers.has_others()) {
        (_, true) => format!("Large: {main}. Small: {}.", list(&others)),
        (true, false) => format!("Number and colour: {main}."),
        (false, false) => format!("Colour: {main}."),
    };
    vec![
        format!(
            "{shown} Each the middle of {members} plausible tanks, the same ones in every cell."
        ),
        format!("{shown} Middle of the same {members} plausible tanks."),
        shown,
    ]
}

/// `water changed (L)`.
fn in_brackets(line: &Line) -> String {
    match unit(line) {
        "" => line.short.to_string(),
        unit => format!("{} ({unit})", line.short),
    }
}
