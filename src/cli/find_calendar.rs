//! `find-calendar`: the changes of water that do with least.

use super::args::{FindCalendar as Options, TableForm};
use super::exit::{Exit, Failure};
use super::{load, progress, say, stopping};
use crate::analysis::calendar::conflict::Conflict;
use crate::analysis::calendar::wish::CalendarWish;
use crate::analysis::calendar::{Ended, Found};
use crate::analysis::case::Case;
use crate::analysis::outcome::Outcome;
use crate::base::stop::Stop;
use crate::output::calendar::entries::entries;
use crate::output::calendar::{Story, table};
use crate::output::files::Draft;
use crate::output::folder::FolderError;
use crate::output::manifest;
use crate::output::text;

/// Loads, searches, writes and says.
pub fn run(options: &Options) -> Result<(), Failure> {
    let loaded = load::scenario(&options.file)?;
    let case = &loaded.case;
    let wish = wish(case, options)?;
    let place = options.into.place_of("find-calendar", &options.file);
    let folder = place.target().to_path_buf();
    let stop = stopping::listen();
    let draft = Draft::open(place)?;
    let outcome = Outcome::of(case)?;
    let found = found(case, wish, options, &stop)?;
    if let Some(conflict) = &found.conflict {
        return Err(nothing_holds(case, &found, conflict, options)?);
    }
    let story = Story {
        plan: manifest::Story {
            case,
            outcome: &outcome,
            forecast: None,
            files: &load::texts(&loaded),
            options: &repeatable(options),
        },
        file: &options.file,
        folder: &folder,
        found: &found,
    };
    let entries = entries(&story, !options.no_charts)?;
    for entry in &entries {
        draft.put(&entry.name, &entry.bytes)?;
    }
    let written = draft.publish()?;
    let words = match options.format {
        Some(form) => as_table(case, &found, form)?,
        None => {
            let mut page = text::find_calendar::page(case, &found);
            let names: Vec<String> = entries.into_iter().map(|entry| entry.name).collect();
            text::closing(&mut page, &folder, &written, &names);
            page.render(width())
        }
    };
    say::out(&words)
        .map_err(|failure| failure.but(&format!("the results are in {}", written.folder.display())))
}

/// Says that no calendar keeps what was asked for, or that none was found before somebody stopped the search.
fn nothing_holds(
    case: &Case,
    found: &Found,
    conflict: &Conflict,
    options: &Options,
) -> Result<Failure, Failure> {
    if found.ended == Ended::Stopped {
        return Ok(Failure {
            exit: Exit::Stopped,
            words:
                "stopped before a calendar was found that keeps what was asked for; nothing is written"
                    .into(),
        });
    }
    let words = match options.format {
        Some(form) => as_table(case, found, form)?,
        None => text::find_calendar::page(case, found).render(width()),
    };
    say::out(&words)?;
    Ok(Failure {
        exit: Exit::NoSolution,
        words: text::find_calendar::none(case, found, conflict),
    })
}

/// The plan as written and every choice, in the form that was asked for.
fn as_table(case: &Case, found: &Found, form: TableForm) -> Result<String, Failure> {
    let written = table(case, found).written(form.into());
    Ok(written.map_err(FolderError::from)?)
}

fn width() -> usize {
    say::width().unwrap_or(text::WIDEST)
}

fn wish<'a>(case: &'a Case, options: &Options) -> Result<&'a CalendarWish, Failure> {
    case.calendar.as_ref().ok_or_else(|| {
        let file = options.file.display();
        Failure::bad_input(format!(
            "error: {file} does not say on which days water could be changed\n  = help: add a section [calendar], for example\n          [calendar]\n          free = [\"Tue\", \"Sat\"]      # weekdays need a start; leave it out for every day\n          most_share = \"50 %\"\n          `firstfill explain keys` has the rest"
        ))
    })
}

fn found(
    case: &Case,
    wish: &CalendarWish,
    options: &Options,
    stop: &Stop,
) -> Result<Found, Failure> {
    let mut bar = progress::of("runs", 0);
    let found = Found::of(case, wish, options.trying(), stop, |done, of| {
        bar.at_of(done, of)
    });
    Ok(found?)
}

/// The options that shape the files, as they could be typed again.
fn repeatable(options: &Options) -> Vec<(String, String)> {
    let least = clap::ValueEnum::to_possible_value(&options.least);
    let mut list = vec![
        ("command".into(), "find-calendar".into()),
        (
            "least".into(),
            least.map_or(String::new(), |value| value.get_name().into()),
        ),
        ("members".into(), options.members.to_string()),
        ("seed".into(), options.seed.to_string()),
    ];
    if options.no_charts {
        list.push(("no-charts".into(), "true".into()));
    }
    list
}
