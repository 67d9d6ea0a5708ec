//! The page of a comparison: who is ready before whom and why, all figures, and what the files say otherwise.

use crate::output::chart::compare::figures;
use crate::output::compare::{Story, others, table};
use crate::output::csv::NotANumber;
use crate::output::folder::Entry;
use crate::output::text;

use super::report::{Report, page};
use super::table::{Words, meaning, name};

/// The page as a file.
///
/// # Errors
/// When a figure is no number.
pub fn entry(story: &Story<'_>) -> Result<Entry, NotANumber> {
    let comparison = story.comparison;
    let all = Words::of_csv(
        "Every figure of every plan",
        &table::table(comparison).csv()?,
        meaning,
    );
    let differences = others::differences(comparison).csv()?;
    let differences = Words::of_csv("From what to what, defaults too", &differences, name);
    let how = format!(
        "firstfill {} ran every plan on the same {} plausible tanks (seed {}): tank 17 has the same unknown soil, surface and \
         nitrifiers in every one of them, so what differs is what the files say.",
        env!("CARGO_PKG_VERSION"),
        comparison.common.members,
        comparison.common.seed
    );
    let names: Vec<&str> = (comparison.strategies.iter())
        .map(|plan| plan.case.name.as_str())
        .collect();
    let html = page(&Report {
        over: "Plans of a tank, held against each other by firstfill",
        title: &names.join(" / "),
        words: &text::compare::page(comparison),
        figures: &figures(comparison),
        tables: &[
            ("Where the files differ".into(), differences),
            ("All figures".into(), all.turned()),
        ],
        how: &[how],
        files: &once(story),
    });
    Ok(Entry {
        name: "page.html".into(),
        bytes: html.into_bytes(),
    })
}

/// The files of all plans, each once.
fn once(story: &Story<'_>) -> Vec<(String, String)> {
    let mut files: Vec<(String, String)> = Vec::new();
    for file in story.files.iter().flatten() {
        if !files.contains(file) {
            files.push(file.clone());
        }
    }
    files
}
