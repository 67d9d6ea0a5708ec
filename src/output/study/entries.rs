//! Everything that is found by a study, as names and bytes.

use crate::base::stop::Stop;
use crate::output::chart::study::figures;
use crate::output::csv::{self, guide};
use crate::output::folder::{Entry, FolderError, drawn_all, of_table};
use crate::output::table::Table;

use super::{Story, convergence, indices, regions, verdict};

/// Name of the file of the verdict.
pub const VERDICT: &str = "verdict.txt";

/// The tables; `regions.csv` where some tanks are ready by the day and some are not.
pub fn tables(story: &Story<'_>) -> Vec<Table> {
    let mut tables = vec![indices::table(story), convergence::table(story)];
    tables.extend(regions::table(story));
    tables
}

/// All files: tables with the list of their columns, the verdict, charts. The rows, whose heads are in that list too, and
/// the manifest stand there already.
///
/// # Errors
/// When a number is none, a chart cannot be drawn, or somebody wishes to stop.
pub fn entries(
    story: &Story<'_>,
    rows: csv::Table,
    charts: bool,
    stop: &Stop,
) -> Result<Vec<Entry>, FolderError> {
    let mut all = vec![rows];
    for table in tables(story) {
        all.push(table.csv()?);
    }
    all.push(guide::table(&all));
    let mut entries: Vec<Entry> = all.into_iter().skip(1).map(of_table).collect();
    entries.push(Entry {
        name: VERDICT.into(),
        bytes: verdict::text(story).into_bytes(),
    });
    if charts {
        entries.extend(drawn_all(&figures(story), stop)?);
    }
    Ok(entries)
}
