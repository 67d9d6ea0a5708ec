//! Storey 5: files in. A scenario file becomes a checked case, or a list of all its problems.
//!
//! ```text
//! file(s) --files, based_on--> tree with places --reader, sections--> Case
//!                                      every problem goes to the desk, nothing stops at the first
//! ```

mod based_on;
mod beside;
mod build;
mod calendar;
mod desk;
mod draft;
mod draw;
mod files;
pub mod keys;
pub mod lesson;
pub mod paths;
pub mod problem;
mod read;
mod reader;
mod refusal;
mod repeats;
mod sections;
mod steps;
pub mod study;
mod timer;
mod tree;
pub mod varied;
pub mod words;

use std::path::{Path, PathBuf};

use crate::analysis::case::Case;

use desk::Desk;
use files::Files;
use problem::Problem;
pub use problem::Problems;

/// A scenario that was read without a problem.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// What to run.
    pub case: Case,
    /// Text of the scenario itself.
    pub text: String,
    /// The scenario and everything it is based on, with their texts, in the order of the chain.
    pub files: Vec<(PathBuf, String)>,
}

/// Reads and checks a scenario file.
///
/// # Errors
/// With all problems of the file and of those it is based on.
pub fn load(path: &Path) -> Result<Loaded, Problems> {
    match files::read(path) {
        Ok(text) => read(path, text, Files::default(), 0),
        Err(problem) => Err(alone(path, *problem)),
    }
}

/// Reads and checks a scenario from texts that were kept with their names, the one asked for first; no
/// file is looked at.
///
/// # Errors
/// With all problems of the texts, or when one that is needed was not kept.
pub fn load_kept(kept: Vec<(PathBuf, String)>) -> Result<Loaded, Problems> {
    let Some((path, text)) = kept.first().cloned() else {
        return Err(alone(Path::new(""), build::empty("")));
    };
    let long = kept
        .iter()
        .find(|(_, text)| text.len() > files::LARGEST_BYTES);
    if let Some((path, text)) = long {
        let problem = files::too_large(&path.display().to_string(), text.len() as u64);
        return Err(alone(path, problem));
    }
    read(&path, text, Files::of_kept(kept), 0)
}

/// Reads and checks a scenario from a text; `name` stands for the file in messages.
///
/// # Errors
/// With all problems of the text and of the files it is based on.
pub fn read_text(name: &str, text: &str) -> Result<Loaded, Problems> {
    if text.len() > files::LARGEST_BYTES {
        let problem = files::too_large(name, text.len() as u64);
        return Err(alone(Path::new(name), problem));
    }
    let text = files::without_mark(text).to_string();
    read(Path::new(name), text, Files::default(), 0)
}

/// The same scenario filled so many days later: day numbers and weekdays go with the filling, dates stay, and
/// absences that are over by then are left out.
///
/// # Errors
/// When that is not possible: something else is planned for a date before the filling.
pub fn put_off(loaded: &Loaded, days: u32) -> Result<Case, Problems> {
    let path = loaded.files.first().map(|(path, _)| path.clone());
    let kept = Files::of_kept(loaded.files.clone());
    let path = path.unwrap_or_default();
    Ok(read(&path, loaded.text.clone(), kept, days)?.case)
}

fn alone(path: &Path, problem: Problem) -> Problems {
    Problems::new(&path.display().to_string(), Files::default(), vec![problem])
}

fn read(
    path: &Path,
    text: String,
    mut files: Files,
    put_off_days: u32,
) -> Result<Loaded, Problems> {
    let name = path.display().to_string();
    let stem = path
        .file_stem()
        .map_or(name.clone(), |stem| stem.to_string_lossy().into_owned());
    let merged = based_on::load(&mut files, path, text.clone());
    if merged.table.entries.is_empty() && merged.problems.is_empty() {
        return Err(alone(path, build::empty(&name)));
    }
    let desk = Desk::default();
    let case = build::case(&desk, &merged.table, &stem, put_off_days);
    let mut problems = merged.problems;
    let apart = |problem: &Problem| match &problem.place {
        Some(place) => !merged.broken.iter().any(|broken| broken.touches(place)),
        None => true,
    };
    problems.extend(desk.take_problems().into_iter().filter(apart));
    match case {
        Some(case) if problems.is_empty() => Ok(Loaded {
            case,
            text,
            files: files.into_list(),
        }),
        _ => Err(Problems::new(&name, files, problems)),
    }
}
