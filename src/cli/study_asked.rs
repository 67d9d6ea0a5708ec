//! What `study` is asked for: a study file, or the manifest of an earlier study; and whether it begins, goes on, or is
//! done already.

use std::path::Path;

use super::args::{Study as Options, study_members};
use super::exit::Failure;
use super::{asked, say};
use crate::analysis::study::slice::Slice;
use crate::base::shown::grouped;
use crate::output::chart::words::trimmed;
use crate::output::growing::{Found, GrowingError, found, free_bytes, hidden};
use crate::output::place::Place;
use crate::output::rows::manifest::{COMMAND, Kept};
use crate::output::rows::results::FILE;
use crate::output::rows::size;
use crate::scenario::problem::Problems;
use crate::scenario::study::{self, Asking, LoadedStudy};

/// Words for large counts, and units of room, the largest first.
const COUNTS: [(f64, &str); 2] = [(1e9, "billion"), (1e6, "million")];
const ROOM: [(f64, &str); 3] = [(1e12, "TB"), (1e9, "GB"), (1e6, "MB")];
/// A number of these is told without its tenths from here on.
const WHOLE_FROM: f64 = 10.0;

/// How a study begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// From its first row.
    Anew,
    /// Behind the rows that are there.
    GoOn,
    /// It is there, whole.
    Done,
}

/// Reads the study. From a manifest come its texts, and members and seed unless others are given beside it.
pub fn load(options: &Options) -> Result<LoadedStudy, Failure> {
    let asking = Asking {
        members: options.members.map(Into::into),
        seed: options.seed.map(Into::into),
    };
    let file = &options.file;
    let loaded = if file.extension().is_some_and(|end| end == "json") {
        let repeat = asked::manifest(file)?;
        let option = |name: &str| {
            let found = repeat.options.iter().find(|(known, _)| known == name);
            found.map_or("", |(_, value)| value.as_str())
        };
        if option("command") != COMMAND {
            let name = file.display();
            return Err(Failure::bad_input(format!(
                "error: {name} is not of a study\n  = help: give the manifest.json of an earlier study, or a study file, whose name ends in .toml"
            )));
        }
        asked::refuse_unknown(file, &repeat, &["members", "seed"])?;
        let members = asked::read_as(file, &repeat, "members", study_members)?;
        let as_then = Asking {
            members: asking.members.or(members.map(Into::into)),
            seed: asking.seed.or(asked::then(file, &repeat, "seed")?),
        };
        study::load_kept(repeat.files, as_then)
    } else {
        study::load(file, asking)
    };
    loaded.map_err(|problems| refused(&problems))
}

/// Problems of a study, said.
pub fn refused(problems: &Problems) -> Failure {
    Failure::bad_input(problems.render(say::err_has_colour()))
}

/// Refuses rows that take more room than anybody expects, or than there is.
pub fn refuse_large(
    options: &Options,
    loaded: &LoadedStudy,
    slice: Slice,
    target: &Path,
) -> Result<(), Failure> {
    let rows = slice.rows(loaded.study.rows());
    let there = if options.resume {
        rows_there(target)
    } else {
        0
    };
    let bytes = size::bytes(&loaded.study, &loaded.family, &rows).saturating_sub(there);
    let free = free_bytes(target).unwrap_or(u64::MAX);
    if options.yes || bytes <= size::MOST_BYTES.min(free) {
        return Ok(());
    }
    let (count, takes) = (in_words(rows.end - rows.start), room(bytes));
    let room = match bytes > free {
        true => format!(", and {} are free", room(free)),
        false => String::new(),
    };
    Err(Failure::bad_input(format!(
        "error: {count} rows take about {takes}{room}\n  = help: add --yes to run them all the same, take fewer --members, or spread them with --shard"
    )))
}

/// `13.3 billion`; small counts in figures.
fn in_words(count: u64) -> String {
    let large = COUNTS.iter().find(|(from, _)| count as f64 >= *from);
    large.map_or_else(
        || grouped(count as usize),
        |(one, word)| {
            format!(
                "{} {word}",
                trimmed((10.0 * count as f64 / one).round() / 10.0)
            )
        },
    )
}

/// `18 TB`, `1.2 GB`.
fn room(bytes: u64) -> String {
    let found = ROOM.iter().find(|(one, _)| bytes as f64 >= *one);
    let (one, word) = found.unwrap_or(&ROOM[ROOM.len() - 1]);
    let number = bytes as f64 / one;
    let digits = usize::from(number < WHOLE_FROM);
    format!("{number:.digits$} {word}")
}

/// Bytes of the rows that an unfinished study has left.
fn rows_there(target: &Path) -> u64 {
    let there = std::fs::metadata(hidden(target).join(FILE));
    there.map_or(0, |file| file.len())
}

/// Whether the study begins, goes on, or is done already.
pub fn start(options: &Options, place: &Place, manifest: &str) -> Result<Start, Failure> {
    let target = place.target();
    match found(target) {
        Found::Unfinished(there) if options.resume => {
            same(&there, manifest, &hidden(target))?;
            Ok(Start::GoOn)
        }
        Found::Unfinished(_) if !options.into.force => Err(Failure::bad_input(format!(
            "error: an unfinished study is in {}\n  = help: go on with it with --resume, or begin anew with --force",
            hidden(target).display()
        ))),
        Found::Finished(there) if options.resume && !options.into.force => {
            same(&there, manifest, target)?;
            Ok(Start::Done)
        }
        _ => Ok(Start::Anew),
    }
}

/// Refuses to go on with another study.
fn same(there: &str, here: &str, folder: &Path) -> Result<(), Failure> {
    let folder = folder.display();
    let other = |what: String| {
        Failure::bad_input(format!(
            "error: {folder} holds another study\n{what}  = help: name another folder with --out, or begin anew with --force"
        ))
    };
    let kept = |text: &str| Kept::read(text).ok().flatten();
    let (Some(there), Some(here)) = (kept(there), kept(here)) else {
        return Err(other("  its manifest is of another command\n".into()));
    };
    let mut differences = there.differences(&here);
    if differences.is_empty() && there.slice != here.slice {
        let (there, here) = (there.slice.number, here.slice.number);
        differences.push(format!("slice: {there} there, {here} here"));
    }
    match differences.is_empty() {
        true => Ok(()),
        false => Err(other(format!("  {}\n", differences.join("\n  ")))),
    }
}

/// What is said where there is nothing left to do.
pub fn done_already(folder: &Path) -> String {
    format!(
        "the study is in {}, whole; nothing was run\n",
        folder.display()
    )
}

/// What is kept of a study that ended on its way.
pub fn kept(done: u64, of: u64, folder: &Path) -> String {
    format!(
        "{done} of {of} rows are kept in {}; go on with --resume",
        folder.display()
    )
}

impl From<GrowingError> for Failure {
    fn from(error: GrowingError) -> Failure {
        match error {
            GrowingError::Write(why) => why.into(),
            GrowingError::InUse(_) => Failure::bad_input(format!(
                "error: {error}\n  = help: wait for it, or name another folder with --out"
            )),
        }
    }
}
