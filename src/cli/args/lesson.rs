//! The options of `lesson`.

use std::path::PathBuf;

use clap::Args;

use crate::analysis::lesson::{LESSONS, Lesson as Asked, find};
use crate::scenario::words::closest;

/// Options of `lesson`.
#[derive(Debug, Clone, Args)]
#[command(after_help = "Examples:\n  \
        firstfill lesson\n      \
        the list of lessons\n  \
        firstfill lesson early-changes\n      \
        a page for the browser, a chart and tables in output/lesson-early-changes/\n  \
        firstfill lesson output/lesson-early-changes/manifest.json\n      \
        the same again, to the byte\n  \
        firstfill lesson early-changes --scenarios --out mine\n      \
        with its scenarios; change them, then: firstfill lesson early-changes --from mine")]
pub struct Lesson {
    /// Which lesson, or the manifest.json of an earlier one, to repeat it; without a name they are listed
    #[arg(value_name = "NAME", value_parser = which)]
    pub lesson: Option<WhichLesson>,
    /// Folder to write; it must not exist yet [default: output/lesson-NAME]
    #[arg(long, value_name = "DIR", requires = "lesson")]
    pub out: Option<PathBuf>,
    /// Replace the folder if it holds an earlier run
    #[arg(long, requires = "lesson")]
    pub force: bool,
    /// Write the scenarios too, to be read and changed
    #[arg(long, requires = "lesson")]
    pub scenarios: bool,
    /// Run the lesson on the scenarios in this folder, as --scenarios wrote them and you changed them
    #[arg(long, value_name = "DIR", requires = "lesson")]
    pub from: Option<PathBuf>,
}

/// Which lesson is asked for.
#[derive(Debug, Clone)]
pub enum WhichLesson {
    /// The one of a name.
    Named(&'static Asked),
    /// An earlier one, by its manifest.
    Again(PathBuf),
}

fn which(typed: &str) -> Result<WhichLesson, String> {
    let path = PathBuf::from(typed);
    match path.extension().is_some_and(|end| end == "json") {
        true => Ok(WhichLesson::Again(path)),
        false => named(typed).map(WhichLesson::Named),
    }
}

fn named(key: &str) -> Result<&'static Asked, String> {
    find(key).ok_or_else(|| {
        let names: Vec<&str> = LESSONS.iter().map(|lesson| lesson.key).collect();
        let part_of = names.iter().find(|name| name.contains(key)).copied();
        let near = closest(key, names.iter().copied()).or(part_of);
        let tried = near.map_or(String::new(), |name| format!("; did you mean {name}?"));
        format!("the lessons are {}{tried}", names.join(", "))
    })
}
