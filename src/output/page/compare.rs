//! The page of a comparison: who is ready before whom and why, all figures, and what the files say otherwise.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::lines::Line;
use crate::analysis::compare::value::Value;
use crate::output::chart::compare::figures;
use crate::output::chart::words::{number, short};
use crate::output::compare::{Story, others};
use crate::output::csv::NotANumber;
use crate::output::folder::Entry;

use super::compare_result::{heads, result};
use super::report::{Report, page};
use super::table::{NOTHING, Words, name};

/// The page as a file.
///
/// # Errors
/// When a figure is no number.
pub fn entry(story: &Story<'_>) -> Result<Entry, NotANumber> {
    let comparison = story.comparison;
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
        result: result(comparison),
        figures: &figures(comparison),
        tables: &[
            ("Where the files differ".into(), differences),
            ("All figures".into(), all_figures(comparison)),
        ],
        how: &[how],
        files: &once(story),
    });
    Ok(Entry {
        name: "page.html".into(),
        bytes: html.into_bytes(),
    })
}

/// A row per figure, a column per plan.
fn all_figures(comparison: &Comparison<'_>) -> Words {
    let row = |line: &Line| {
        let cells = line.values.iter();
        let cells = cells.map(|value| cell(line, value, comparison.last_day));
        std::iter::once(name_of(line)).chain(cells).collect()
    };
    Words {
        caption: "Middle of all tanks, in brackets what 5 and 95 of 100 stay under".into(),
        heads: heads(comparison, "Figure"),
        rows: comparison.lines.iter().map(row).collect(),
    }
}

fn name_of(line: &Line) -> String {
    let (what, _) = line.what.split_once("; empty").unwrap_or((line.what, ""));
    match line.unit {
        "" | "1" | "day" => what.into(),
        unit => format!("{what}, {unit}"),
    }
}

/// A value with what 5 and 95 of 100 stay under.
pub fn cell(line: &Line, value: &Value, last_day: u32) -> String {
    let is_whole = line.unit == "day" || line.name == "visits";
    let words = |value: f64| match is_whole {
        true => number(value, 0),
        false => short(value),
    };
    match value {
        Value::Nothing => NOTHING.into(),
        Value::Later => format!("after day {last_day}"),
        Value::Band([low, middle, high]) if low != high => {
            format!("{} ({} to {})", words(*middle), words(*low), words(*high))
        }
        Value::One(middle) | Value::Band([_, middle, _]) => words(*middle),
    }
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
