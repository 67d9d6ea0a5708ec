//! Everything that goes into the folder of a lesson, as names and bytes.

use std::ffi::OsStr;
use std::path::Path;

use crate::analysis::lesson::claim::Unsupported;
use crate::analysis::lesson::taught::Taught;
use crate::base::stop::Stop;
use crate::output::chart::lesson::figure;
use crate::output::csv::guide;
use crate::output::folder::{Entry, FolderError, drawn_all, of_table};
use crate::output::page;
use crate::output::place::MARK;

use super::{manifest, tables};

/// Why a lesson cannot be written.
#[derive(Debug, thiserror::Error)]
pub enum EntriesError {
    /// Its folder cannot be filled.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// Its numbers support no sentence.
    #[error(transparent)]
    Unsupported(#[from] Unsupported),
}

/// All files of a lesson; the scenarios only where they are wanted.
///
/// # Errors
/// When a number is none, the chart cannot be drawn, the numbers support no sentence, or somebody wishes to stop.
pub fn entries(
    taught: &Taught<'_>,
    files: &[(String, String)],
    with_scenarios: bool,
    stop: &Stop,
) -> Result<Vec<Entry>, EntriesError> {
    let number = FolderError::from;
    let mut of_steps = vec![
        tables::steps(taught).csv().map_err(number)?,
        tables::curves(taught).csv().map_err(number)?,
    ];
    of_steps.push(guide::table(&of_steps));
    let mut entries = vec![Entry {
        name: "lesson.html".into(),
        bytes: page::lesson::page(taught, files)?.into_bytes(),
    }];
    let figure = figure(taught, taught.lesson.shown)?;
    entries.extend(drawn_all(&[figure], stop)?);
    entries.extend(of_steps.into_iter().map(of_table));
    entries.push(Entry {
        name: MARK.into(),
        bytes: manifest::text(taught, files, with_scenarios).into_bytes(),
    });
    if with_scenarios {
        let written = files.iter().filter(|(name, _)| is_plain(name));
        entries.extend(written.map(|(name, text)| Entry {
            name: name.clone(),
            bytes: text.clone().into_bytes(),
        }));
    }
    Ok(entries)
}

/// Whether a name is that of a file in the folder itself: no other is written there.
fn is_plain(name: &str) -> bool {
    Path::new(name).file_name() == Some(OsStr::new(name))
}
