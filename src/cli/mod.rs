//! Storey 6: words typed in, exit code out. One command is one file: load, call, write, say.

pub mod args;
mod asked;
mod check;
mod compare;
mod compare_asked;
mod completions;
pub mod exit;
mod explain;
mod find_calendar;
mod gather;
mod latest_fill;
mod lesson;
mod lesson_asked;
mod levers;
mod load;
mod load_many;
pub mod panics;
mod progress;
mod rank_changes;
mod run;
mod say;
mod stopping;
mod study;
mod study_asked;
mod study_found;
mod study_told;
mod sweep;
mod sweep_asked;

use clap::Parser;

use args::{Command, Line};
use exit::{Exit, Failure};

/// Reads the command line of the process, does what it asks, and says how it ended.
pub fn run() -> Exit {
    panics::catch(|| match Line::try_parse() {
        Ok(line) => end(obey(&line.command)),
        Err(refusal) => refused(&refusal),
    })
}

fn obey(command: &Command) -> Result<(), Failure> {
    match command {
        Command::Run(options) => run::run(options),
        Command::Check(options) => check::check(options),
        Command::Compare(options) => compare::run(options),
        Command::Sweep(options) => sweep::run(options),
        Command::Study(options) => study::run_study(options),
        Command::Gather(options) => gather::run(options),
        Command::Levers(options) => levers::levers(options),
        Command::FindCalendar(options) => find_calendar::run(options),
        Command::RankChanges(options) => rank_changes::run(options),
        Command::LatestFill(options) => latest_fill::run(options),
        Command::Lesson(options) => lesson::run(options),
        Command::Explain(options) => explain::explain(options),
        Command::Completions(options) => completions::completions(options.shell),
        Command::Manual => completions::manual(),
    }
}

fn end(ended: Result<(), Failure>) -> Exit {
    match ended {
        Ok(()) => Exit::Done,
        Err(failure) => {
            say::err(&failure.words);
            failure.exit
        }
    }
}

/// Help and version are refusals to clap, but not to the user.
fn refused(refusal: &clap::Error) -> Exit {
    let text = refusal.render().ansi().to_string();
    if refusal.use_stderr() {
        say::err(&text);
        return Exit::BadInput;
    }
    end(say::out(&text))
}
