//! A point of a grid as lines of a scenario, and the scenario that they make.

use std::path::PathBuf;

use crate::analysis::case::Case;
use crate::analysis::sweep::axis::Axis;
use crate::scenario::desk::Desk;
use crate::scenario::files::Files;
use crate::scenario::problem::{Problem, Problems};
use crate::scenario::tree::{self, Table};
use crate::scenario::{Loaded, based_on, build};

use super::{NAME, ground, name_of, paths};

/// A scenario that lines are laid over, parsed once.
pub struct Ground<'a> {
    loaded: &'a Loaded,
    files: Files,
    table: Table,
    stem: String,
}

impl<'a> Ground<'a> {
    /// The scenario as it was read.
    pub fn of(loaded: &'a Loaded) -> Ground<'a> {
        let (files, merged) = ground(loaded);
        let path = PathBuf::from(name_of(loaded));
        let stem = path.file_stem().unwrap_or(path.as_os_str());
        Ground {
            loaded,
            files,
            table: merged.table,
            stem: stem.to_string_lossy().into_owned(),
        }
    }
    /// The scenario with the values of a point, read anew.
    ///
    /// # Errors
    /// With all problems of the reader, and the numbers near by where a path is none.
    pub fn with(&self, axes: &[Axis], at: &[usize]) -> Result<Case, Problems> {
        let text = written(axes, at);
        let mut files = self.files.clone();
        let file = files.add(&PathBuf::from(NAME), text);
        let (lines, mut problems) = tree::parse(file, files.text(file));
        let table = based_on::over(self.table.clone(), lines);
        let desk = Desk::default();
        let case = build::case(&desk, &table, &self.stem, 0);
        problems.extend(desk.take_problems());
        match case {
            Some(case) if problems.is_empty() => Ok(case),
            _ => {
                let problems = problems.into_iter();
                let helped: Vec<Problem> = problems
                    .map(|one| paths::with_numbers(one, file, axes, &self.table))
                    .map(|one| as_typed(one, (file, files.text(file)), axes, at))
                    .collect();
                Err(Problems::new(&name_of(self.loaded), files, helped))
            }
        }
    }
}

/// Adds to a problem with a value between the ends of a range how the range was typed.
fn as_typed(problem: Problem, (file, text): (usize, &str), axes: &[Axis], at: &[usize]) -> Problem {
    let place = problem.place.as_ref().filter(|place| place.file == file);
    let line = place.map(|place| text[..place.start].matches('\n').count());
    let Some((axis, place)) = line.and_then(|line| Some((axes.get(line)?, *at.get(line)?))) else {
        return problem;
    };
    let count = axis.settings.len();
    if place == 0 || place + 1 == count {
        return problem; // the ends were typed
    }
    let ends = [&axis.settings[0], &axis.settings[count - 1]].map(|end| end.words.as_str());
    let [first, last] = ends;
    let typed = format!("{}={first}..{last}:{count}", axis.path);
    problem.help(format!(
        "it is one of the {count} values of {NAME} '{typed}'"
    ))
}

/// One line per axis: `changes.early.share = "20 %"`, `changes.early.every = 3`.
fn written(axes: &[Axis], at: &[usize]) -> String {
    let lines = axes.iter().zip(at).map(|(axis, &place)| {
        let words = &axis.settings[place].words;
        match axis.unit.is_empty() {
            true => format!("{} = {words}\n", axis.path),
            false => format!("{} = \"{words}\"\n", axis.path),
        }
    });
    lines.collect()
}
