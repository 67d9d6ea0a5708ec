//! The scenarios of a lesson: the tank all lessons share, the lesson's own, and one per step, each based on the one
//! before.

use std::path::{Path, PathBuf};

use crate::analysis::lesson::{Lesson, Step, TANK};

use super::files::Files;
use super::{Loaded, Problems, alone, load, load_kept};

/// Name of the file of the tank.
const TANK_FILE: &str = "tank.toml";

/// Name of the scenario of a step.
pub fn file_of(lesson: &Lesson, step: &Step) -> String {
    format!("{}-{}.toml", lesson.key, step.key)
}

/// Name and text of every scenario of a lesson.
pub fn files(lesson: &Lesson) -> Vec<(String, String)> {
    let mut files = vec![
        (TANK_FILE.to_string(), TANK.to_string()),
        (own_file(lesson), lesson.scenario.to_string()),
    ];
    let steps = lesson.steps.iter();
    files.extend(steps.map(|step| (file_of(lesson, step), text_of(lesson, step))));
    files
}

/// Reads the scenarios of all steps: as the program knows them, or as they lie in a folder.
///
/// # Errors
/// With all problems of the first step that has any.
pub fn read(lesson: &Lesson, folder: Option<&Path>) -> Result<Vec<Loaded>, Problems> {
    let of_step = |step: &Step| match folder {
        Some(folder) => load(&folder.join(file_of(lesson, step))),
        None => load_kept(kept(lesson, step)),
    };
    lesson.steps.iter().map(of_step).collect()
}

/// Reads the scenarios of all steps from texts that were kept with their names; no file is looked at.
///
/// # Errors
/// With all problems of the first step that has any, or when a text that is needed was not kept.
pub fn read_kept(lesson: &Lesson, kept: &[(PathBuf, String)]) -> Result<Vec<Loaded>, Problems> {
    let of_step = |step: &Step| {
        let own = PathBuf::from(file_of(lesson, step));
        let text = Files::of_kept(kept.to_vec()).fetch(&own);
        let text = text.map_err(|problem| alone(&own, *problem))?;
        // the one that is asked for comes first
        let mut files = vec![(own, text)];
        files.extend_from_slice(kept);
        load_kept(files)
    };
    lesson.steps.iter().map(of_step).collect()
}

fn own_file(lesson: &Lesson) -> String {
    format!("{}.toml", lesson.key)
}

/// The scenario of a step as text.
pub fn text_of(lesson: &Lesson, step: &Step) -> String {
    let mut text = format!(
        "# A step of the lesson \"{}\": {}. An invented tank.\n\nbased_on = \"{}\"\nname = \"{}\"\n",
        lesson.title,
        step.label,
        own_file(lesson),
        step.label,
    );
    if !step.lines.is_empty() {
        text += &format!("\n{}", step.lines);
    }
    text
}

fn kept(lesson: &Lesson, step: &Step) -> Vec<(PathBuf, String)> {
    let file = |name: String, text: &str| (PathBuf::from(name), text.to_string());
    vec![
        file(file_of(lesson, step), &text_of(lesson, step)),
        file(own_file(lesson), lesson.scenario),
        file(TANK_FILE.into(), TANK),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::lesson::LESSONS;

    #[test]
    fn the_scenarios_of_every_lesson_can_be_read() {
        for lesson in &LESSONS {
            let loaded = read(lesson, None).unwrap_or_else(|problems| {
                panic!("{}: {}", lesson.key, problems.render(false));
            });
            assert_eq!(loaded.len(), lesson.steps.len());
            for key in ["# Watch for:", "An invented tank."] {
                assert!(lesson.scenario.contains(key), "{}: {key}", lesson.key);
            }
        }
    }
}
