//! What a study finds, worked out from its rows on the disk; a slice alone finds nothing.

use super::args::Told;
use super::exit::Failure;
use crate::analysis::study::findings::{Findings, Gathering};
use crate::analysis::study::slice::Slice;
use crate::base::stop::Stop;
use crate::output::csv::guide;
use crate::output::folder::{Entry, FolderError, of_table};
use crate::output::growing::Growing;
use crate::output::rows::manifest::name;
use crate::output::rows::results::Results;
use crate::output::study::{Story, entries::entries, indices};
use crate::output::text::{self, Page};
use crate::scenario::study::LoadedStudy;

/// What was found: words, and the files that are written beside the rows.
pub struct Found {
    /// What is said.
    pub words: Words,
    /// What is written.
    pub files: Vec<Entry>,
}

/// What is said at the end.
pub enum Words {
    /// A page, to be closed with the names of the files.
    Page(Page),
    /// Words that stand alone.
    Alone(String),
}

/// Of a slice: that it is done, and the list of its columns.
pub fn of_slice(loaded: &LoadedStudy, slice: Slice) -> Found {
    let rows = Results::of(&loaded.study).table();
    Found {
        words: Words::Alone(format!(
            "slice {} of {} is done; when all are, join them with `firstfill gather DIR…`\n",
            slice.number, slice.of
        )),
        files: vec![of_table(guide::table(&[rows]))],
    }
}

/// Reads the rows back and works out what they show.
pub fn of(
    loaded: &LoadedStudy,
    growing: &Growing,
    told: Told,
    stop: &Stop,
) -> Result<Found, Failure> {
    let study = &loaded.study;
    let findings = findings(loaded, growing, stop)?;
    let story = Story {
        name: &name(&loaded.files),
        study,
        findings: &findings,
    };
    let files = entries(&story, Results::of(study).table(), !told.no_charts, stop)?;
    let words = match told.format {
        Some(form) => {
            let table = indices::table(&story).written(form.into());
            Words::Alone(table.map_err(FolderError::from)?)
        }
        None => Words::Page(text::study::page(&story)),
    };
    Ok(Found { words, files })
}

fn findings(loaded: &LoadedStudy, growing: &Growing, stop: &Stop) -> Result<Findings, Failure> {
    let study = &loaded.study;
    let mut gathering = Gathering::new(study);
    let read = Results::of(study).read(growing.read()?, 0, |row, _| {
        gathering.take(&row);
        Ok(())
    });
    let unreadable =
        |why| Failure::bad_input(format!("error: {}: {why}", growing.folder().display()));
    read.map_err(unreadable)?;
    stop.check()?;
    Ok(gathering.findings())
}
