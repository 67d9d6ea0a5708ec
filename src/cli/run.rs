//! `run`: simulate a scenario and write what it says.

use std::path::{Path, PathBuf};

use super::args::Run;
use super::asked::{self, Asked};
use super::exit::Failure;
use super::{load, progress, say, stopping};
use crate::analysis::case::Case;
use crate::analysis::forecast::{Forecast, Making};
use crate::analysis::outcome::Outcome;
use crate::base::stop::Stop;
use crate::output::files::Draft;
use crate::output::folder::{self, FolderError, Wanted};
use crate::output::place::Place;
use crate::output::{manifest, page, text};

/// Loads, runs, judges, writes and says.
pub fn run(options: &Run) -> Result<(), Failure> {
    let Asked { loaded, options } = &asked::read(options)?;
    let case = &loaded.case;
    check_days(options, case)?;
    let place = place(options);
    let first_choice = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let wanted = wanted(options);
    let mut outcome = Outcome::of(case)?;
    outcome.look_closely(case, &wanted.closely(&outcome))?;
    stop.check()?;
    let forecast = forecast(options, case, &outcome, &stop)?;
    let story = manifest::Story {
        case,
        outcome: &outcome,
        forecast: forecast.as_ref(),
        files: &load::texts(loaded),
        options: &repeatable(options),
    };
    let mut entries = folder::entries(&story, &wanted, &stop)?;
    if options.page {
        entries.push(page::run::entry(&story, &wanted).map_err(FolderError::from)?);
    }
    for entry in &entries {
        stop.check()?;
        draft.put(&entry.name, &entry.bytes)?;
    }
    stop.check()?;
    let written = draft.publish()?;
    let mut page = text::report(&text::Story {
        case,
        outcome: &outcome,
        forecast: forecast.as_ref(),
        length: match options.full {
            true => text::Length::Full,
            false => text::Length::Screen,
        },
        file: typed_again(&options.file).as_deref(),
    });
    let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
    text::closing(&mut page, &first_choice, &written, &names);
    say::out(&page.render(say::width().unwrap_or(text::WIDEST)))
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

/// Many plausible tanks, unless only the central run was asked for.
fn forecast(
    options: &Run,
    case: &Case,
    outcome: &Outcome,
    stop: &Stop,
) -> Result<Option<Forecast>, Failure> {
    if options.single {
        return Ok(None);
    }
    // a day that is asked for has its bands by the hour, drawn or not
    let drawn_days = if options.no_charts && options.day.is_empty() {
        Vec::new()
    } else {
        folder::days_to_draw(outcome, &options.day)
    };
    let making = Making {
        members: options.members(),
        seed: options.seed(),
        drawn_days: &drawn_days,
    };
    let mut bar = progress::of("plausible tanks", making.members);
    Ok(Some(Forecast::of(case, making, stop, |done, _| {
        bar.at(done)
    })?))
}

/// The scenario as a word on the command line; none where a manifest was run.
fn typed_again(file: &Path) -> Option<String> {
    let is_scenario = file.extension().is_some_and(|ending| ending == "toml");
    let name = file.display().to_string();
    is_scenario.then(|| match name.contains(char::is_whitespace) {
        true => format!("\"{name}\""),
        false => name,
    })
}

fn check_days(options: &Run, case: &Case) -> Result<(), Failure> {
    let last = case.input.last_day;
    match options.day.iter().find(|&&day| day > last) {
        None => Ok(()),
        Some(day) => Err(Failure::bad_input(format!(
            "error: --day {day} is not in the run, whose days are 0 to {last}"
        ))),
    }
}

fn place(options: &Run) -> Place {
    let stem = options.file.file_stem().unwrap_or_default();
    let usual = PathBuf::from("output").join(stem);
    options.into.place(&usual)
}

fn wanted(options: &Run) -> Wanted {
    Wanted {
        every_minutes: options.every(),
        charts: !options.no_charts,
        days: options.day.clone(),
    }
}

/// The options that shape the files, as they could be typed again.
fn repeatable(options: &Run) -> Vec<(String, String)> {
    let mut list = vec![("every".to_string(), format!("{}min", options.every()))];
    list.extend(
        options
            .day
            .iter()
            .map(|day| ("day".to_string(), day.to_string())),
    );
    if options.single {
        list.push(("single".into(), "true".into()));
    } else {
        list.push(("members".into(), options.members().to_string()));
        list.push(("seed".into(), options.seed().to_string()));
    }
    if options.no_charts {
        list.push(("no-charts".into(), "true".into()));
    }
    if options.page {
        list.push(("page".into(), "true".into()));
    }
    list
}
