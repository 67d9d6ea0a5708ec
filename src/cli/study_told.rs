//! The end of a study: what is found, worked out from the rows on the disk, written beside them and said.

use std::path::Path;

use super::args::Told;
use super::exit::Failure;
use super::say;
use super::study_found::{self, Words};
use crate::analysis::study::slice::Slice;
use crate::base::stop::Stop;
use crate::output::growing::Growing;
use crate::output::place::{MARK, Written};
use crate::output::rows::results::FILE;
use crate::output::text;
use crate::scenario::study::LoadedStudy;

/// What is said at the end, and where everything is.
pub struct Ended {
    /// A page, to be closed with the names of the files; or words that stand alone.
    words: Words,
    written: Written,
    names: Vec<String>,
}

/// Works out what was found, writes it beside the rows and gives the folder its name. A slice finds nothing.
pub fn finish(
    loaded: &LoadedStudy,
    slice: Slice,
    growing: Growing,
    told: Told,
    stop: &Stop,
) -> Result<Ended, Failure> {
    let found = match slice.is_whole() {
        true => study_found::of(loaded, &growing, told, stop)?,
        false => study_found::of_slice(loaded, slice),
    };
    let names = found.files.iter().map(|entry| entry.name.clone());
    let names = names.chain([FILE, MARK].map(String::from)).collect();
    stop.check()?;
    let written = growing.finish(&found.files)?;
    Ok(Ended {
        words: found.words,
        written,
        names,
    })
}

/// Says it, with where everything is.
pub fn closing(ended: Ended, first_choice: &Path) -> Result<(), Failure> {
    let folder = ended.written.folder.display().to_string();
    let words = match ended.words {
        Words::Alone(words) => words,
        Words::Page(mut page) => {
            text::closing(&mut page, first_choice, &ended.written, &ended.names);
            page.render(say::width().unwrap_or(text::WIDEST))
        }
    };
    say::out(&words).map_err(|failure| failure.but(&format!("the results are in {folder}")))
}
