//! A scenario with one or two values varied over a grid.
//!
//! Start at [`axes`] and [`grid`]. A value of the grid is a line of a scenario, laid over the file as
//! `based_on` lays one file over another, and the whole is read by the ordinary reader: every path a scenario
//! knows can be varied, and what is wrong is told as of any file.
//!
//! ```text
//! "changes.early.share=20 %..80 %:4" --spec, paths--> Axis --lines--> Case, Case, Case, Case
//! ```

pub(super) mod division;
mod lines;
mod named;
pub(super) mod paths;
pub(super) mod spec;

use std::path::PathBuf;

use crate::analysis::case::Case;
use crate::analysis::sweep::MOST_AXES;
use crate::analysis::sweep::axis::{Axis, points};

use super::files::Files;
use super::problem::{Problem, Problems};
use super::{Loaded, based_on};
use lines::Ground;

/// What stands for the file in messages about what is varied.
const NAME: &str = "--vary";

/// What is varied, from texts such as `changes.early.share=20 %..80 %:4`.
///
/// # Errors
/// With all that is wrong: the form of a text, a path no scenario has, a value between two whole ones.
pub fn axes(loaded: &Loaded, texts: &[String]) -> Result<Vec<Axis>, Problems> {
    let (mut files, written) = ground(loaded);
    let mut problems = Vec::new();
    let mut axes: Vec<Axis> = Vec::new();
    for text in texts {
        let file = files.add(&PathBuf::from(NAME), text.clone());
        match spec::read(file, text) {
            Ok(spec) => {
                let twice = axes.iter().any(|axis| axis.path == spec.axis.path);
                problems.extend(twice.then(|| spec::twice(&spec)));
                problems.extend(paths::unknown(&spec, &written));
                axes.push(spec.axis);
            }
            Err(problem) => problems.push(*problem),
        }
    }
    if texts.is_empty() || texts.len() > MOST_AXES {
        problems.push(how_many(texts.len()));
    }
    match problems.is_empty() {
        true => Ok(axes),
        false => Err(Problems::new(&name_of(loaded), files, problems)),
    }
}

/// The scenario of every point of a grid, the last axis running fastest.
///
/// # Errors
/// With all problems of the first point that has some, or when points differ in length.
pub fn grid(loaded: &Loaded, axes: &[Axis]) -> Result<Vec<Case>, Problems> {
    let ground = Ground::of(loaded);
    let mut cases: Vec<Case> = Vec::new();
    for at in points(axes) {
        let case = ground.with(axes, &at)?;
        let first = cases.first().unwrap_or(&case);
        if first.input.last_day != case.input.last_day {
            let files = Files::of_kept(loaded.files.clone());
            return Err(Problems::new(&name_of(loaded), files, vec![lengths()]));
        }
        cases.push(case);
    }
    Ok(cases)
}

/// The files of a scenario read once more from their texts, and their merged tree.
fn ground(loaded: &Loaded) -> (Files, based_on::Merged) {
    let mut files = Files::of_kept(loaded.files.clone());
    let path = loaded.files.first().map(|(path, _)| path.clone());
    let merged = based_on::load(&mut files, &path.unwrap_or_default(), loaded.text.clone());
    (files, merged)
}

fn name_of(loaded: &Loaded) -> String {
    let first = loaded.files.first();
    first.map_or(String::new(), |(path, _)| path.display().to_string())
}

fn how_many(count: usize) -> Problem {
    let title = match count {
        0 => "nothing is varied".to_string(),
        many => {
            format!("{many} values are varied at once, and no page shows more than {MOST_AXES}")
        }
    };
    Problem::of_file(NAME, title).help(format!("give one or two, each like {}", spec::EXAMPLE))
}

fn lengths() -> Problem {
    Problem::of_file(NAME, "the points of the grid are of different length")
        .help("weeks that are not there cannot be held against others: leave length as it is")
}
