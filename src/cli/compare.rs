//! `compare`: plans against each other, on the same plausible tanks.

use std::path::PathBuf;

use super::args::Compare as Options;
use super::compare_asked::Asked;
use super::exit::Failure;
use super::{compare_asked, load, progress, say, stopping};
use crate::analysis::compare::{Comparison, Entrant};
use crate::base::stop::Stop;
use crate::output::compare::entries::entries;
use crate::output::compare::{Story, Texts, keys, table};
use crate::output::files::Draft;
use crate::output::folder::FolderError;
use crate::output::{page, text};
use crate::scenario::Loaded;

/// Loads, runs, holds against each other, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let Asked { loaded, options } = &compare_asked::read(options)?;
    let keys = keys::keys(&options.files);
    let usual = PathBuf::from("output").join(keys::folder_name(&keys));
    let place = options.into.place(&usual);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let comparison = compared(options, loaded, &keys, &stop)?;
    let files: Vec<Texts> = loaded.iter().map(load::texts).collect();
    let story = Story {
        comparison: &comparison,
        files: &files,
        options: &repeatable(options),
    };
    let mut entries = entries(&story, !options.no_charts, &stop)?;
    if options.page {
        entries.push(page::compare::entry(&story).map_err(FolderError::from)?);
    }
    for entry in &entries {
        stop.check()?;
        draft.put(&entry.name, &entry.bytes)?;
    }
    stop.check()?;
    let written = draft.publish()?;
    let words = match options.format {
        Some(form) => table::table(&comparison)
            .written(form.into())
            .map_err(FolderError::from)?,
        None => {
            let length = match options.full {
                true => text::Length::Full,
                false => text::Length::Screen,
            };
            let mut page = text::compare::page(&comparison, length);
            let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
            text::closing(&mut page, &first_choice, &written, &names);
            page.render(say::width().unwrap_or(text::WIDEST))
        }
    };
    say::out(&words)
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

fn compared<'a>(
    options: &Options,
    loaded: &'a [Loaded],
    keys: &[String],
    stop: &Stop,
) -> Result<Comparison<'a>, Failure> {
    let entrants = loaded.iter().zip(keys).map(|(one, key)| Entrant {
        key: key.clone(),
        case: &one.case,
    });
    let entrants: Vec<Entrant<'_>> = entrants.collect();
    let mut bar = progress::of("plausible tanks", 0);
    let ran = Comparison::of(&entrants, options.common(), stop, |done, of| {
        bar.at_of(done, of)
    });
    Ok(ran?)
}

/// The options that shape the files, as they could be typed again.
fn repeatable(options: &Options) -> Vec<(String, String)> {
    let common = options.common();
    let mut list = vec![
        ("command".into(), "compare".into()),
        ("members".into(), common.members.to_string()),
        ("seed".into(), common.seed.to_string()),
    ];
    if options.no_charts {
        list.push(("no-charts".into(), "true".into()));
    }
    if options.page {
        list.push(("page".into(), "true".into()));
    }
    list
}
