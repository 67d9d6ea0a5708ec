//! `lesson`: a question answered from what is run there and then.

use std::path::PathBuf;

use super::args::Lesson as Options;
use super::exit::Failure;
use super::lesson_asked::{self, Asked};
use super::{progress, say, stopping};
use crate::analysis::lesson::taught::Taught;
use crate::output::files::Draft;
use crate::output::lesson::entries::entries;
use crate::output::place::Place;
use crate::output::text;

/// Lists the lessons, or runs one, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let Some(which) = &options.lesson else {
        return say::out(&text::lesson::list().render(say::width().unwrap_or(text::WIDEST)));
    };
    let Asked {
        lesson,
        cases,
        common,
        files,
        with_scenarios,
    } = lesson_asked::read(which, options)?;
    let usual = PathBuf::from("output").join(format!("lesson-{}", lesson.key));
    let place = Place::asked(options.out.as_deref(), options.force, &usual);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let mut bar = progress::of("plausible tanks", 0);
    let taught = Taught::of(lesson, &cases, common, &stop, |done, of| {
        bar.at_of(done, of)
    })?;
    drop(bar);
    let entries = entries(&taught, &files, with_scenarios, &stop)?;
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
