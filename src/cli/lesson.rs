//! `lesson`: a question answered from what is run there and then.

use std::path::PathBuf;

use super::args::Lesson as Options;
use super::exit::Failure;
use super::{load, progress, say, stopping};
use crate::analysis::case::Case;
use crate::analysis::compare::Common;
use crate::analysis::forecast::USUAL_SEED;
use crate::analysis::lesson::Lesson;
use crate::analysis::lesson::taught::{MEMBERS, Taught};
use crate::output::files::Draft;
use crate::output::lesson::Files;
use crate::output::lesson::entries::entries;
use crate::output::place::Place;
use crate::output::text;
use crate::scenario::{self, Loaded};

/// Lists the lessons, or runs one, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let Some(lesson) = options.lesson else {
        return say::out(&text::lesson::list().render(say::width().unwrap_or(text::WIDEST)));
    };
    let loaded = read(lesson, options)?;
    let usual = PathBuf::from("output").join(format!("lesson-{}", lesson.key));
    let place = Place::asked(options.out.as_deref(), options.force, &usual);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let cases: Vec<Case> = loaded.iter().map(|one| one.case.clone()).collect();
    let common = Common {
        members: MEMBERS,
        seed: USUAL_SEED,
    };
    let mut bar = progress::of("plausible tanks", 0);
    let taught = Taught::of(lesson, &cases, common, &stop, |done, of| {
        bar.at_of(done, of)
    })?;
    drop(bar);
    let entries = entries(
        &taught,
        &files(lesson, options, &loaded),
        options.scenarios,
        &stop,
    )?;
    for entry in &entries {
        stop.check()?;
        draft.put(&entry.name, &entry.bytes)?;
    }
    stop.check()?;
    let mut page = text::lesson::page(&taught)?;
    let written = draft.publish()?;
    let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
    text::closing(&mut page, &first_choice, &written, &names);
    say::out(&page.render(say::width().unwrap_or(text::WIDEST)))
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

fn read(lesson: &Lesson, options: &Options) -> Result<Vec<Loaded>, Failure> {
    if let Some(folder) = options.from.as_deref().filter(|folder| !folder.is_dir()) {
        let (folder, key) = (folder.display(), lesson.key);
        return Err(Failure::bad_input(format!(
            "error: there is no folder {folder} with the scenarios of this lesson\n  \
             = help: `firstfill lesson {key} --scenarios --out {folder}` writes them there; change them, then use --from"
        )));
    }
    scenario::lesson::read(lesson, options.from.as_deref())
        .map_err(|problems| Failure::bad_input(problems.render(say::err_has_colour())))
}

/// The scenarios as they were run, each once, in the order in which the program writes them.
fn files(lesson: &Lesson, options: &Options, loaded: &[Loaded]) -> Files {
    let mut files = scenario::lesson::files(lesson);
    if options.from.is_none() {
        return files;
    }
    for (path, text) in loaded.iter().flat_map(load::texts) {
        let name = PathBuf::from(path);
        let name = name.file_name().unwrap_or_default().to_string_lossy();
        match files.iter_mut().find(|(known, _)| *known == name) {
            Some((_, own)) => *own = text,
            None => files.push((name.into_owned(), text)),
        }
    }
    files
}
