//! Several scenario files, read, or refused with all that is wrong in any of them.

use std::path::{Path, PathBuf};

use super::exit::Failure;
use super::say;
use crate::analysis::compare::{FEWEST, MOST};
use crate::scenario::{self, Loaded};

/// Reads the scenarios of a comparison.
pub fn scenarios(files: &[PathBuf]) -> Result<Vec<Loaded>, Failure> {
    let mut wrong: Vec<String> = number_of(files).into_iter().collect();
    let mut loaded = Vec::with_capacity(files.len());
    for (place, file) in files.iter().enumerate() {
        match scenario::load(file) {
            Ok(one) => loaded.push(one),
            // of a file named twice once is enough
            Err(_) if files[..place].contains(file) => {}
            Err(problems) => wrong.push(problems.render(say::err_has_colour()).trim_end().into()),
        }
    }
    wrong.extend(doubles(files));
    if loaded.len() == files.len() {
        wrong.extend(lengths(files, &loaded));
    }
    match wrong.is_empty() {
        true => Ok(loaded),
        false => Err(Failure::bad_input(wrong.join("\n\n"))),
    }
}

fn number_of(files: &[PathBuf]) -> Option<String> {
    let help = "name two to eight scenarios: firstfill compare daily.toml weekly.toml";
    match files.len() {
        few if few < FEWEST => Some(format!(
            "error: one plan cannot be compared; give at least {FEWEST} files\n  = help: {help}"
        )),
        many if many > MOST => Some(format!(
            "error: {many} files; at most {MOST} plans fit on one screen and page\n  = help: {help}"
        )),
        _ => None,
    }
}

/// A file against itself is a check that gives nothing everywhere; among more than two it is a slip.
fn doubles(files: &[PathBuf]) -> Vec<String> {
    if files.len() <= FEWEST {
        return Vec::new();
    }
    let is_second = |place: usize| {
        let earlier = files[..place].iter();
        earlier.filter(|file| **file == files[place]).count() == 1
    };
    let again = (0..files.len()).filter(|&place| is_second(place));
    again
        .map(|place| {
            let name = files[place].display();
            format!("error: {name} is named twice\n  = help: name each plan once; two files may be the same, to see that nothing differs")
        })
        .collect()
}

/// Peaks, hours and ready days can only be held against each other over the same days.
fn lengths(files: &[PathBuf], loaded: &[Loaded]) -> Option<String> {
    let last_day = |one: &Loaded| one.case.input.last_day;
    let first = loaded.first()?;
    if loaded.iter().all(|one| last_day(one) == last_day(first)) {
        return None;
    }
    let line = |(file, one): (&PathBuf, &Loaded)| line(file, last_day(one));
    let lines: Vec<String> = files.iter().zip(loaded).map(line).collect();
    Some(format!(
        "error: the plans are of different length\n{}\n  = help: give all of them the same length, for example length = {}",
        lines.join("\n"),
        loaded.iter().map(last_day).max().unwrap_or(0)
    ))
}

fn line(file: &Path, last_day: u32) -> String {
    format!("  {} runs to day {last_day}", file.display())
}
