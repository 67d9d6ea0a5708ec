//! `levers`: what could be done otherwise, and what that would bring.

use super::args::Levers as Options;
use super::exit::Failure;
use super::{load, progress, say, stopping};
use crate::analysis::levers::Levers;
use crate::analysis::outcome::Outcome;
use crate::output::files::Draft;
use crate::output::folder;
use crate::output::manifest;
use crate::output::text;

/// Loads, tries, writes and says.
pub fn levers(options: &Options) -> Result<(), Failure> {
    let loaded = load::scenario(&options.file)?;
    let case = &loaded.case;
    let place = options.into.place_of("levers", &options.file);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let outcome = Outcome::of(case)?;
    let mut bar = progress::of("levers", 0);
    let levers = Levers::of(case, options.on.trying(), &stop, |done, of| {
        bar.at_of(done, of)
    })?;
    drop(bar);
    let story = manifest::Story {
        case,
        outcome: &outcome,
        forecast: None,
        files: &load::texts(&loaded),
        options: &repeatable(options),
    };
    let entries = folder::lever_entries(&story, &levers, &stop)?;
    for entry in &entries {
        stop.check()?;
        draft.put(&entry.name, &entry.bytes)?;
    }
    stop.check()?;
    let written = draft.publish()?;
    let mut page = text::levers::page(case, &levers);
    let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
    text::closing(&mut page, &first_choice, &written, &names);
    say::out(&page.render(say::width().unwrap_or(text::WIDEST)))
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

/// The options that shape the files, as they could be typed again.
fn repeatable(options: &Options) -> Vec<(String, String)> {
    vec![
        ("command".into(), "levers".into()),
        ("members".into(), options.on.members.to_string()),
        ("seed".into(), options.on.seed.to_string()),
    ]
}
