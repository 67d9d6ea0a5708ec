//! `rank-changes`: what every water change is worth, and which may go.

use super::args::RankChanges as Options;
use super::exit::Failure;
use super::{load, progress, say, stopping};
use crate::analysis::case::Case;
use crate::analysis::change_worth::ChangeWorth;
use crate::analysis::change_worth::planned::planned;
use crate::analysis::outcome::Outcome;
use crate::base::stop::Stop;
use crate::output::change_worth::entries::entries;
use crate::output::change_worth::table;
use crate::output::files::Draft;
use crate::output::folder::FolderError;
use crate::output::manifest::Story;
use crate::output::text;

/// Loads, tries, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let loaded = load::scenario(&options.file)?;
    let case = &loaded.case;
    refuse_without_changes(options, case)?;
    let place = options.into.place_of("rank-changes", &options.file);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let outcome = Outcome::of(case)?;
    let worth = ranked(options, case, &stop)?;
    let story = Story {
        case,
        outcome: &outcome,
        forecast: None,
        files: &load::texts(&loaded),
        options: &repeatable(options),
    };
    let entries = entries(&story, &worth, !options.no_charts, &stop)?;
    for entry in &entries {
        stop.check()?;
        draft.put(&entry.name, &entry.bytes)?;
    }
    stop.check()?;
    let written = draft.publish()?;
    let words = match options.format {
        Some(form) => table::table(case, &worth)
            .written(form.into())
            .map_err(FolderError::from)?,
        None => {
            let mut page = text::change_worth::page(case, &worth);
            let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
            text::closing(&mut page, &first_choice, &written, &names);
            page.render(say::width().unwrap_or(text::WIDEST))
        }
    };
    say::out(&words)
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

fn ranked(options: &Options, case: &Case, stop: &Stop) -> Result<ChangeWorth, Failure> {
    let mut bar = progress::of("plausible tanks", 0);
    let ran = ChangeWorth::of(case, options.common(), stop, |done, of| bar.at_of(done, of));
    Ok(ran?)
}

fn refuse_without_changes(options: &Options, case: &Case) -> Result<(), Failure> {
    if !planned(&case.input).is_empty() {
        return Ok(());
    }
    let file = options.file.display();
    Err(Failure::bad_input(format!(
        "error: {file} has no water change to rank\n  = help: write one under [changes], for example weekly = {{ days = \"7..56\", every = 7, share = \"40 %\" }}; or ask what one a week would bring: firstfill levers {file}"
    )))
}

/// The options that shape the files, as they could be typed again.
fn repeatable(options: &Options) -> Vec<(String, String)> {
    let mut list = vec![
        ("command".into(), "rank-changes".into()),
        ("members".into(), options.members.to_string()),
        ("seed".into(), options.seed.to_string()),
    ];
    if options.no_charts {
        list.push(("no-charts".into(), "true".into()));
    }
    list
}
