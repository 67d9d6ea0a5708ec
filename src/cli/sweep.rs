//! `sweep`: one or two values of a scenario varied over a grid, on the same plausible tanks.

use std::path::PathBuf;

use super::args::Sweep as Options;
use super::exit::Failure;
use super::sweep_asked::Asked;
use super::{load, progress, say, stopping, sweep_asked};
use crate::analysis::sweep::Sweep;
use crate::analysis::sweep::axis::Axis;
use crate::base::stop::Stop;
use crate::output::files::Draft;
use crate::output::folder::FolderError;
use crate::output::sweep::entries::entries;
use crate::output::sweep::{Story, keys, shown, table};
use crate::output::table::Form;
use crate::output::{page, text};
use crate::scenario::{Loaded, varied};

/// Loads, runs, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let Asked { loaded, options } = &sweep_asked::read(options)?;
    let axes = sweep_asked::axes(loaded, options)?;
    let usual = PathBuf::from("output").join(keys::folder_name(&options.file, &axes));
    let place = options.into.place(&usual);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let sweep = swept(options, loaded, &axes, &stop)?;
    let story = Story {
        sweep: &sweep,
        of: &shown::places(&sweep, &options.of),
        case: &loaded.case,
        files: &load::texts(loaded),
        options: &sweep_asked::repeatable(options),
    };
    let mut entries = entries(&story, !options.no_charts, &stop)?;
    if options.page {
        entries.push(page::sweep::entry(&story));
    }
    for entry in &entries {
        stop.check()?;
        draft.put(&entry.name, &entry.bytes)?;
    }
    stop.check()?;
    let written = draft.publish()?;
    let in_form = |form: Form| table::table(&sweep).written(form);
    let words = match options.format {
        Some(form) => in_form(form.into()).map_err(FolderError::from)?,
        None => {
            let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
            let mut page = text::sweep::page(&story);
            text::closing(&mut page, &first_choice, &written, &names);
            page.render(say::width().unwrap_or(text::WIDEST))
        }
    };
    say::out(&words)
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

fn swept(options: &Options, loaded: &Loaded, axes: &[Axis], stop: &Stop) -> Result<Sweep, Failure> {
    let cases = varied::grid(loaded, axes).map_err(|problems| sweep_asked::refused(&problems))?;
    let mut bar = progress::of("plausible tanks", 0);
    let ran = Sweep::of(axes, &cases, options.common(), stop, |done, of| {
        bar.at_of(done, of)
    });
    Ok(ran?)
}
