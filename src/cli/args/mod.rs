//! The flags, with help that teaches.

mod compare;
mod find_calendar;
mod interval;
mod into;
mod latest_fill;
mod lesson;
mod levers;
mod one_of;
mod plausible;
mod rank_changes;
mod run;
mod study;
mod sweep;

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

use super::exit::CODES;
pub use compare::{Compare, TableForm};
pub use find_calendar::FindCalendar;
pub(super) use interval::minutes_between_rows;
pub use latest_fill::LatestFill;
pub use lesson::{Lesson, WhichLesson};
pub use levers::Levers;
pub(super) use plausible::how_many;
pub use rank_changes::RankChanges;
pub use run::Run;
pub(super) use study::members as study_members;
pub use study::{Gather, Study, Told};
pub use sweep::Sweep;

/// The first eight weeks of a newly filled planted aquarium, before you fill it
#[derive(Debug, Parser)]
#[command(
    name = "firstfill",
    version,
    max_term_width = 100,
    arg_required_else_help = true,
    disable_help_subcommand = true,
    long_about = "The first eight weeks of a newly filled planted freshwater aquarium, before you fill it.\n\n\
        Describe the tank in one text file: glass, soil, water, light, gas, plants, and your calendar of \
        water changes. firstfill simulates it in steps of an hour or less and shows when ammonia and nitrite \
        come and go, what the nights do to oxygen, what the gas does to pH, where the nitrogen went, and \
        the first day on which fish could go in.",
    after_help = "Examples:\n  \
        firstfill run scenarios/heavy-early-changes.toml     eight weeks as charts, tables and an answer\n  \
        firstfill check my-tank.toml                         is the file right, and what does it mean?",
    after_long_help = help_end()
)]
pub struct Line {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

fn help_end() -> String {
    format!(
        "Examples:\n  \
        firstfill run scenarios/heavy-early-changes.toml\n      \
        eight weeks as charts, tables and an answer, in output/heavy-early-changes/\n  \
        firstfill check my-tank.toml\n      \
        is the file right, and what does it mean? Nothing is written\n\n\
        Exit codes: {CODES}."
    )
}

const RUN: &str = "Simulate a scenario and write charts, tables and a report.\n\n\
        Everything goes into one folder, output/<name of the file>/, or the next free name. The folder is \
        written whole or not at all. The report on the terminal says when fish could go in, and why.";

const CHECK: &str = "Check a scenario and print what it means; nothing is run or written.\n\n\
        Every mistake is shown at once, with its line and what to write instead. A file without mistakes \
        is printed as understood: the tank, the water, the calendar, and where each value came from.";

const LEVERS: &str = "Try what you could do otherwise, each thing alone, on the same plausible tanks.\n\n\
        Water changes, refill, temperature, mature medium, night air, gas, light, plants, soil, feed: by how many \
        days each brings the ready day nearer, and what it takes. The table goes to output/levers-<name of the \
        file>/, or the next free name.";

const COMPARE: &str = "Hold two to eight plans against each other, on the same plausible tanks.\n\n\
        Ready days, who is ready before whom, peaks, hours over limits, the worst night, litres, visits, gas, cost: \
        with the best and the worst, why, and what the files say otherwise. Tables and charts go to \
        output/compare-<names of the files>/, or the next free name.";

const SWEEP: &str = "Vary one or two values of a scenario over a grid, on the same plausible tanks.\n\n\
        A value of the grid is read as if you had written it in the file. Of one value: the curves along it and \
        every milestone against it. Of two: maps, with the line where a limit is passed. Table and charts go to \
        output/sweep-<name of the file>-<paths>/, or the next free name.";

const STUDY: &str = "Which unknowns matter, over any number of runs of one family of tanks.\n\n\
        A study file says which tank, what varies and how, what is looked at, and how the runs are laid out: one at a \
        time, clouds of points, trajectories, shares of the variance. Rows grow in results.csv, in a hidden folder \
        beside output/study-<name of the file>/, and stay there when it is stopped: --resume goes on. --shard runs one \
        slice, on any machine.";

const GATHER: &str = "Join the slices of one study, as if it had been run at once.\n\n\
        Slices that do not belong together are refused, missing ones are named, and none counts twice. The results are \
        those of one run, to the byte.";

const RANK_CHANGES: &str = "What every single water change is worth, and which may go.\n\n\
        Each is left out in turn on the same plausible tanks: what that does to the ready day, and to peaks, light on \
        ammonia and KH, each for itself. What may go is run again together before it is said. Then: where one more \
        would help most, and what days away cost. Tables and a chart go to output/rank-changes-<name of the file>/, \
        or the next free name.";

const LATEST_FILL: &str = "Find the latest date of filling by which so many of 100 plausible tanks are ready in time.\n\n\
        Day numbers and weekdays go with the filling, dates (a trip, say) stay. No filling is earlier than start. \
        Nothing is written. Where no date does, the exit code is 3, and the nearest one is named.";

const FIND_CALENDAR: &str = "Find the changes of water that keep what you ask for with least litres or visits, or that are ready first.\n\n\
        [calendar] in the file says on which weekdays somebody is there, how much may be changed at once, by when \
        tanks must be ready and which peaks are borne. A few choices along the trade-off come back as scenario \
        files in output/find-calendar-<name of the file>/, scored on plausible tanks that the search has not seen. \
        Ctrl-C ends the search and keeps the best so far. Where no calendar does, the exit code is 3.";

const LESSON: &str = "Learn from small runs, made there and then: a question, an input moved in a few steps, an answer in numbers.\n\n\
        Without a name the lessons are listed. Each writes one page for the browser that needs no network, an annotated \
        chart and its tables to output/lesson-<name>/, or the next free name. A sentence that the numbers do not support is \
        never written: the lesson ends with 1 instead.";

const EXPLAIN: &str = "Print what the program knows, as tables made from the code itself.\n\n\
        Without a topic the topics are listed.";

const MANUAL: &str = "Examples:\n  \
    firstfill manual | man -l -\n  \
    firstfill manual > ~/.local/share/man/man1/firstfill.1";

/// What firstfill can do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Simulate a scenario and write charts, tables and a report
    #[command(long_about = RUN)]
    Run(Run),
    /// Check a scenario and print what it means; nothing is run or written
    #[command(long_about = CHECK)]
    Check(Check),
    /// Hold two to eight plans against each other, on the same plausible tanks
    #[command(long_about = COMPARE)]
    Compare(Compare),
    /// Vary one or two values of a scenario over a grid
    #[command(long_about = SWEEP)]
    Sweep(Sweep),
    /// Which unknowns matter, over any number of runs: studies that can be stopped, resumed and spread
    #[command(long_about = STUDY)]
    Study(Study),
    /// Join the slices of one study
    #[command(long_about = GATHER)]
    Gather(Gather),
    /// Try what you could do otherwise: which lever brings the ready day nearer, and what it takes
    #[command(long_about = LEVERS)]
    Levers(Levers),
    /// Find the changes of water that keep what you ask for with least
    #[command(long_about = FIND_CALENDAR)]
    FindCalendar(FindCalendar),
    /// What every single water change is worth, which may go, and where one more would help
    #[command(long_about = RANK_CHANGES)]
    RankChanges(RankChanges),
    /// Find the latest date of filling to be ready by a date
    #[command(long_about = LATEST_FILL)]
    LatestFill(LatestFill),
    /// Learn from small runs: why early changes matter, when zero means ready, and seven more
    #[command(long_about = LESSON)]
    Lesson(Lesson),
    /// Print what the program knows: processes, parameters, columns, units, sources, limits, keys, milestones
    #[command(long_about = EXPLAIN)]
    Explain(Explain),
    /// Print a completion script for your shell
    Completions(Completions),
    /// Print the manual page
    #[command(after_help = MANUAL)]
    Manual,
}

/// Options of `check`.
#[derive(Debug, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill check my-tank.toml\n      \
        all mistakes at once, or the tank as understood\n  \
        firstfill check my-tank.toml | grep default\n      \
        what was assumed because the file does not say it\n  \
        firstfill check my-tank.toml --uncertain\n      \
        what is not known of such a tank, by how much, and who says so"
)]
pub struct Check {
    /// The scenario, a TOML file
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Print what is uncertain instead: every input that varies, how far, with its source, and what is kept
    #[arg(long)]
    pub uncertain: bool,
}

/// Options of `explain`.
#[derive(Debug, Args)]
#[command(after_help = "Examples:\n  \
        firstfill explain parameters | less\n      \
        every number of the model with unit, range and source\n  \
        firstfill explain columns --csv > columns.csv\n      \
        the same kind of table for a spreadsheet")]
pub struct Explain {
    /// What to explain
    #[arg(value_enum)]
    pub topic: Option<Topic>,
    /// Write CSV instead of a table
    #[arg(long, requires = "topic")]
    pub csv: bool,
}

/// What can be explained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Topic {
    /// What happens in the tank, and how one step of each changes the pools
    Processes,
    /// Every number of the model, with unit, default, range and source
    Parameters,
    /// Every column of the CSV files
    Columns,
    /// Every unit that can be written in a scenario
    Units,
    /// The publications the numbers come from
    Sources,
    /// The limits a tank is judged by
    Limits,
    /// Every key of a scenario file
    Keys,
    /// Every milestone that a study can look at
    Milestones,
    /// Every key of a study file
    Study,
}

/// Options of `completions`.
#[derive(Debug, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill completions bash > ~/.local/share/bash-completion/completions/firstfill\n  \
        firstfill completions fish > ~/.config/fish/completions/firstfill.fish"
)]
pub struct Completions {
    /// The shell
    #[arg(value_enum)]
    pub shell: clap_complete::Shell,
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_holds_together() {
        Line::command().debug_assert();
    }
}
