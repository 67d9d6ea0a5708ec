//! Everything that goes into the folder of a search for calendars, as names and bytes.

use crate::base::stop::Stop;
use crate::output::chart::calendar::figure;
use crate::output::csv::guide;
use crate::output::folder::{Entry, FolderError, drawn_all, of_table};
use crate::output::manifest;
use crate::output::place::MARK;

use super::{Story, scenario_file, table};

/// The choices as scenario files, the table of them, the manifest, and the chart. A wish to stop has ended the
/// search; what it found is written whole.
///
/// # Errors
/// When a number is none that a file may hold.
pub fn entries(story: &Story<'_>, charts: bool) -> Result<Vec<Entry>, FolderError> {
    let choices = story.found.choices.iter().enumerate();
    let mut entries: Vec<Entry> = choices
        .map(|(place, choice)| Entry {
            name: scenario_file::name(place),
            bytes: scenario_file::text(story, place, choice).into_bytes(),
        })
        .collect();
    let mut tables = vec![table::table(story.plan.case, story.found).csv()?];
    tables.push(guide::table(&tables));
    entries.extend(tables.into_iter().map(of_table));
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(&story.plan)?.into_bytes(),
    });
    if charts {
        let figure = figure(&story.plan, story.found);
        entries.extend(drawn_all(&[figure], &Stop::default())?);
    }
    Ok(entries)
}
