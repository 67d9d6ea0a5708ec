//! Everything that goes into the folder of a sweep, as names and bytes.

use crate::base::stop::Stop;
use crate::output::chart::sweep::figures;
use crate::output::csv::guide;
use crate::output::folder::{Entry, FolderError, drawn_all, of_table};
use crate::output::place::MARK;

use super::{Story, manifest, table};

/// All files of a sweep, tables first.
///
/// # Errors
/// When a number is none, a chart cannot be drawn, or somebody wishes to stop.
pub fn entries(story: &Story<'_>, charts: bool, stop: &Stop) -> Result<Vec<Entry>, FolderError> {
    let mut tables = vec![table::table(story.sweep).csv()?];
    tables.push(guide::table(&tables));
    let mut entries: Vec<Entry> = tables.into_iter().map(of_table).collect();
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(story).into_bytes(),
    });
    if charts {
        entries.extend(drawn_all(&figures(story.sweep, story.of), stop)?);
    }
    Ok(entries)
}
