//! What a study finds, worked out from its rows on the disk.

use super::args::Told;
use super::exit::Failure;
use crate::base::stop::Stop;
use crate::output::csv::Table;
use crate::output::folder::Entry;
use crate::output::growing::Growing;
use crate::output::rows::manifest::name;
use crate::output::rows::results::Results;
use crate::output::text::Page;
use crate::scenario::study::LoadedStudy;

/// What was found: words, files, and the tables among them for the list of columns.
pub struct Found {
    /// What is said.
    pub words: Words,
    /// What is written.
    pub files: Vec<Entry>,
    /// The tables among the files.
    pub tables: Vec<Table>,
}

/// What is said at the end.
pub enum Words {
    /// A page, to be closed with the names of the files.
    Page(Page),
    /// Words that stand alone.
    Alone(String),
}

impl Found {
    /// Nothing but words.
    pub fn nothing(words: String) -> Found {
        Found {
            words: Words::Alone(words),
            files: Vec::new(),
            tables: Vec::new(),
        }
    }
}

/// Reads the rows back and works out what they show.
pub fn of(
    loaded: &LoadedStudy,
    growing: &Growing,
    told: Told,
    stop: &Stop,
) -> Result<Found, Failure> {
    let mut rows = 0;
    let read = Results::of(&loaded.study).read(growing.read()?, 0, |_, _| {
        rows += 1;
        Ok(())
    });
    let unreadable =
        |why| Failure::bad_input(format!("error: {}: {why}", growing.folder().display()));
    read.map_err(unreadable)?;
    stop.check()?;
    let Told {
        no_charts: _,
        format: _,
    } = told;
    let mut page = Page::default();
    page.line(
        crate::output::text::Tone::Plain,
        format!("{rows} rows of {}", name(&loaded.files)),
    );
    Ok(Found {
        words: Words::Page(page),
        files: Vec::new(),
        tables: Vec::new(),
    })
}
