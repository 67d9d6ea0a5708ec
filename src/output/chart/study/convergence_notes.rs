//! What stands under the chart of convergence: which milestones have no line and why, which lines need not fall.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::sizes::DONE_BELOW;
use crate::output::chart::notes::Note;
use crate::output::chart::words::list;
use crate::output::study::words::share;

/// Of milestones that are drawn, those that could not be, and those there is no room for.
pub fn notes(told: &[&Found], unknown: &[&Found], more: &[&Found]) -> Vec<Note> {
    let notes = [left_out(unknown, more, told.len()), few_runs(told)];
    let limits = Note::new("Limits", limits());
    notes.into_iter().flatten().chain([limits]).collect()
}

/// Which milestones have no line, and why.
fn left_out(unknown: &[&Found], more: &[&Found], drawn: usize) -> Option<Note> {
    let names = |found: &[&Found]| {
        let names: Vec<String> = found
            .iter()
            .map(|found| found.milestone.short.into())
            .collect();
        list(&names)
    };
    let mut parts = Vec::new();
    if !unknown.is_empty() {
        parts.push(format!(
            "{}: nothing moves it, or too few members were run",
            names(unknown)
        ));
    }
    if !more.is_empty() {
        parts.push(format!(
            "{}: there is room for {drawn} lines; all are in convergence.csv",
            names(more)
        ));
    }
    (!parts.is_empty()).then(|| Note::new("Not drawn", format!("{}.", parts.join("; "))))
}

/// Milestones whose variance a few runs carry: their lines need not fall as the others do.
fn few_runs(told: &[&Found]) -> Option<Note> {
    let few = told.iter().filter_map(|found| {
        let tail = found.carried_by_few()?;
        let (runs, of, share) = (tail.runs, tail.of, share(tail.share));
        Some(format!(
            "of {} {runs} of {of} runs hold {share} of the variance",
            found.milestone.short
        ))
    });
    let few: Vec<String> = few.collect();
    let words = || {
        format!(
            "{}: their lines hang on which runs were met, and may stay up.",
            list(&few)
        )
    };
    (!few.is_empty()).then(|| Note::new("Few", words()))
}

fn limits() -> String {
    format!(
        "An interval tells what more members would change, not whether the spreads or the model are right. Done: narrower than {DONE_BELOW}."
    )
}
