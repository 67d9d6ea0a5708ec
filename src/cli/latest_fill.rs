//! `latest-fill`: how late a tank may be filled to be ready in time.

use jiff::civil::Date;

use super::args::LatestFill as Options;
use super::exit::{Exit, Failure};
use super::{load, progress, say, stopping};
use crate::analysis::latest_fill::{Wish, latest_fill};
use crate::analysis::levers;
use crate::output::text;
use crate::output::text::latest_fill::{Story, none, page};
use crate::scenario;

/// Members that are enough to rank levers.
const ENOUGH_TO_RANK: usize = 32;

/// Loads, looks and says; writes nothing.
pub fn run(options: &Options) -> Result<(), Failure> {
    let loaded = load::scenario(&options.file)?;
    let wish = Wish {
        ready_by_day: days_from(loaded.case.filled_on, options)?,
        of_100: options.of_100.into(),
        trying: options.on.trying(),
    };
    let stop = stopping::listen();
    let case_of = |days| scenario::put_off(&loaded, days).ok();
    let mut bar = progress::of("filling days", 0);
    let answer = latest_fill(wish, case_of, &stop, |done, of| bar.at_of(done, of))?;
    drop(bar);
    let mut trying = wish.trying;
    trying.members = trying.members.min(ENOUGH_TO_RANK);
    let filled = case_of(answer.best.put_off_days);
    let pulled = levers::ranked(filled.as_ref().unwrap_or(&loaded.case), trying, &stop)?;
    let story = Story {
        case: &loaded.case,
        wish,
        answer: &answer,
        pulled: &pulled,
    };
    say::out(&page(&story).render(say::width().unwrap_or(text::WIDEST)))?;
    match answer.latest {
        Some(_) => Ok(()),
        None => Err(Failure {
            exit: Exit::NoSolution,
            words: none(&story),
        }),
    }
}

/// Days from the start of the scenario to the day by which tanks are to be ready.
fn days_from(filled_on: Option<Date>, options: &Options) -> Result<u32, Failure> {
    let (file, by) = (options.file.display(), options.ready_by);
    let start = filled_on.ok_or_else(|| {
        Failure::bad_input(format!(
            "error: {file} has no start, so no date can be counted from it\n  = help: add a line at the top of the file: start = \"2027-03-06\" (the earliest date of filling)"
        ))
    })?;
    let days = start.until(by).map_or(-1, |span| span.get_days());
    u32::try_from(days).map_err(|_| {
        Failure::bad_input(format!(
            "error: --ready-by {by} is before {start}, the start in {file}, and no filling is earlier than that"
        ))
    })
}
