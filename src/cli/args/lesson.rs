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
        firstfill lesson early-changes --scenarios --out mine\n      \
        with its scenarios; change them, then: firstfill lesson early-changes --from mine")]
pub struct Lesson {
    /// Which lesson; without one they are listed
    #[arg(value_name = "NAME", value_parser = named)]
    pub lesson: Option<&'static Asked>,
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

fn named(key: &str) -> Result<&'static Asked, String> {
    find(key).ok_or_else(|| {
        let names: Vec<&str> = LESSONS.iter().map(|lesson| lesson.key).collect();
        let part_of = names.iter().find(|name| name.contains(key)).copied();
        let near = closest(key, names.iter().copied()).or(part_of);
        let tried = near.map_or(String::new(), |name| format!("; did you mean {name}?"));
        format!("the lessons are {}{tried}", names.join(", "))
    })
}
