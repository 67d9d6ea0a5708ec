//! The page of a sweep: maps or curves, and the figures of every point.

use crate::output::chart::sweep::figures;
use crate::output::csv::NotANumber;
use crate::output::folder::Entry;
use crate::output::sweep::{Story, table};
use crate::output::text;

use super::report::{Report, page};
use super::table::{Words, name};

/// Most rows that a page can bear; the rest stands in `sweep.csv`.
const MOST_ROWS: usize = 150;

/// The page as a file.
///
/// # Errors
/// When a figure is no number.
pub fn entry(story: &Story<'_>) -> Result<Entry, NotANumber> {
    let sweep = story.sweep;
    let mut rows = Words::of_csv("Every point and figure", &table::table(sweep).csv()?, name);
    let all = rows.rows.len();
    if all > MOST_ROWS {
        rows.rows.truncate(MOST_ROWS);
        rows.caption = format!("The first {MOST_ROWS} of {all} rows; all of them are in sweep.csv");
    }
    let how = format!(
        "firstfill {} ran every point of the grid on the same {} plausible tanks (seed {}), each as if its values had been \
         written into the scenario.",
        env!("CARGO_PKG_VERSION"),
        sweep.common.members,
        sweep.common.seed
    );
    let html = page(&Report {
        over: "Values of a tank varied by firstfill",
        title: &story.case.name,
        words: &text::sweep::page(story),
        figures: &figures(sweep, story.of),
        tables: &[("All points".into(), rows)],
        how: &[how],
        files: story.files,
    });
    Ok(Entry {
        name: "page.html".into(),
        bytes: html.into_bytes(),
    })
}
