//! Everything that goes into the folder of a comparison, as names and bytes.

use crate::base::stop::Stop;
use crate::output::chart::compare::figures;
use crate::output::csv::guide;
use crate::output::folder::{Entry, FolderError, drawn_all, of_table};
use crate::output::place::MARK;

use super::{Story, manifest, members, others, table};

/// All files of a comparison, tables first.
///
/// # Errors
/// When a number is none, a chart cannot be drawn, or somebody wishes to stop.
pub fn entries(story: &Story<'_>, charts: bool, stop: &Stop) -> Result<Vec<Entry>, FolderError> {
    let comparison = story.comparison;
    let mut tables = Vec::new();
    for table in [
        table::table(comparison),
        others::pairs(comparison),
        others::effects(comparison),
        others::differences(comparison),
        members::table(comparison),
    ] {
        tables.push(table.csv()?);
    }
    tables.push(guide::table(&tables));
    let mut entries: Vec<Entry> = tables.into_iter().map(of_table).collect();
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(story).into_bytes(),
    });
    if charts {
        entries.extend(drawn_all(&figures(comparison), stop)?);
    }
    Ok(entries)
}
