//! `manifest.json` of a study: what its rows belong to. It is there before the first row, and nothing in it hangs on
//! clock, machine, threads or on what comes of the rows.

use std::path::PathBuf;

use serde::Deserialize;
use serde_json::json;

use crate::analysis::study::Study;
use crate::analysis::study::slice::Slice;
use crate::output::repeat::{self, NotAManifest, Repeat};

/// What a manifest is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// What is asked.
    pub study: &'a Study,
    /// The study file and its scenarios, by their names as seen from the folder of the study.
    pub files: &'a [(PathBuf, String)],
    /// Which of its rows.
    pub slice: Slice,
}

/// The value of `command` among the options.
pub const COMMAND: &str = "study";

/// The manifest as text, ending with a line feed.
pub fn text(story: &Story<'_>) -> String {
    let study = story.study;
    let files = story.files.iter();
    let files =
        files.map(|(path, text)| json!({ "path": path.display().to_string(), "text": text }));
    let option = |name: &str, value: String| json!({ "name": name, "value": value });
    let rows = story.slice.rows(study.rows());
    let milestones = study.milestones.iter().map(|one| one.name);
    let whole = json!({
        "program": env!("CARGO_PKG_NAME"),
        "version": env!("CARGO_PKG_VERSION"),
        "scenario": {
            "name": name(story.files),
            "last_day": study.last_day,
            "files": files.collect::<Vec<_>>(),
        },
        "options": [
            option("command", COMMAND.into()),
            option("members", study.members.to_string()),
            option("seed", study.seed.to_string()),
        ],
        "method": study.method.word(),
        "inputs": study.inputs.len(),
        "milestones": milestones.collect::<Vec<_>>(),
        "rows": study.rows(),
        "slice": {
            "number": story.slice.number,
            "of": story.slice.of,
            "first_row": rows.start,
            "rows": rows.end - rows.start,
        },
    });
    format!("{whole:#}\n")
}

/// Name of the study: that of its file without the ending.
pub fn name(files: &[(PathBuf, String)]) -> String {
    let stem = files.first().and_then(|(path, _)| path.file_stem());
    stem.map_or(String::new(), |stem| stem.to_string_lossy().into_owned())
}

/// A manifest read back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Version, texts and options.
    pub repeat: Repeat,
    /// Which rows are its own.
    pub slice: Slice,
}

#[derive(Deserialize)]
struct OfStudy {
    slice: OfSlice,
}

#[derive(Deserialize)]
struct OfSlice {
    number: u64,
    of: u64,
}

impl Kept {
    /// Reads the text of a manifest; none when it is that of something else than a study.
    ///
    /// # Errors
    /// When it is no manifest of this program.
    pub fn read(text: &str) -> Result<Option<Kept>, NotAManifest> {
        let repeat = repeat::read(text)?;
        let slice = serde_json::from_str(text)
            .ok()
            .and_then(|of: OfStudy| Slice::new(of.slice.number, of.slice.of));
        Ok(slice.map(|slice| Kept { repeat, slice }))
    }
    /// The value of an option.
    pub fn option(&self, name: &str) -> &str {
        let found = self.repeat.options.iter().find(|(known, _)| known == name);
        found.map_or("", |(_, value)| value)
    }
    /// In what it differs from another one, in words: there, here. Which slice it is stands aside.
    pub fn differences(&self, here: &Kept) -> Vec<String> {
        let mut found = Vec::new();
        let mut differ = |what: &str, there: &str, here: &str| {
            if there != here {
                found.push(format!("{what}: {there} there, {here} here"));
            }
        };
        differ("version", &self.repeat.version, &here.repeat.version);
        for option in ["members", "seed"] {
            differ(option, self.option(option), here.option(option));
        }
        let slices = |kept: &Kept| kept.slice.of.to_string();
        differ("number of slices", &slices(self), &slices(here));
        found.extend(texts(&self.repeat.files, &here.repeat.files));
        found
    }
}

type Files = [(PathBuf, String)];

/// The first line in which each file differs.
fn texts(there: &Files, here: &Files) -> Vec<String> {
    let names = |files: &Files| -> Vec<String> {
        files
            .iter()
            .map(|(path, _)| path.display().to_string())
            .collect()
    };
    let (names_there, names_here) = (names(there), names(here));
    if names_there != names_here {
        let (there, here) = (names_there.join(", "), names_here.join(", "));
        return vec![format!("files: {there} there, {here} here")];
    }
    let pairs = there.iter().zip(here).zip(names_here);
    pairs
        .filter_map(|((there, here), name)| first_line(&name, &there.1, &here.1))
        .collect()
}

fn first_line(name: &str, there: &str, here: &str) -> Option<String> {
    if there == here {
        return None;
    }
    let (mut a, mut b) = (there.lines(), here.lines());
    let mut number = 0;
    loop {
        number += 1;
        match (a.next(), b.next()) {
            (None, None) => return Some(format!("{name}: ends of lines")),
            (there, here) if there == here => {}
            (there, here) => {
                let shown = |line: Option<&str>| {
                    line.map_or("nothing".into(), |line| format!("`{}`", line.trim()))
                };
                return Some(format!(
                    "{name}, line {number}: {} there, {} here",
                    shown(there),
                    shown(here)
                ));
            }
        }
    }
}
