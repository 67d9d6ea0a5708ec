//! Everything that goes into the folder of a ranking, as names and bytes.

use crate::analysis::change_worth::ChangeWorth;
use crate::base::stop::Stop;
use crate::output::chart::change_worth::figure;
use crate::output::csv::guide;
use crate::output::folder::{Entry, FolderError, drawn_all, of_table};
use crate::output::manifest::{self, Story};
use crate::output::place::MARK;

use super::{lists, table};

/// All files of a ranking, tables first.
///
/// # Errors
/// When a number is none, the chart or the manifest cannot be written, or somebody wishes to stop.
pub fn entries(
    story: &Story<'_>,
    worth: &ChangeWorth,
    charts: bool,
    stop: &Stop,
) -> Result<Vec<Entry>, FolderError> {
    let mut tables = vec![
        table::table(story.case, worth).csv()?,
        lists::pairs(worth).csv()?,
        lists::drop(worth).csv()?,
    ];
    if let Some(one_more) = &worth.one_more {
        tables.push(lists::one_more(one_more).csv()?);
    }
    if let Some(absence) = &worth.absence {
        tables.push(lists::away(worth, absence).csv()?);
    }
    tables.push(guide::table(&tables));
    let mut entries: Vec<Entry> = tables.into_iter().map(of_table).collect();
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(story)?.into_bytes(),
    });
    if charts {
        let figure = figure(story.case, story.outcome, worth);
        entries.extend(drawn_all(&[figure], stop)?);
    }
    Ok(entries)
}
