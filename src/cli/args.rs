//! The flags, with help that teaches.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};

use jiff::civil::Date;

use super::exit::CODES;
use crate::analysis::forecast::{USUAL_MEMBERS, USUAL_SEED};
use crate::analysis::levers;

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

const LATEST_FILL: &str = "Find the latest date of filling by which so many of 100 plausible tanks are ready in time.\n\n\
        Day numbers and weekdays go with the filling, dates (a trip, say) stay. No filling is earlier than start. \
        Nothing is written. Where no date does, the exit code is 3, and the nearest one is named.";

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
    /// Try what you could do otherwise: which lever brings the ready day nearer, and what it takes
    #[command(long_about = LEVERS)]
    Levers(Levers),
    /// Find the latest date of filling to be ready by a date
    #[command(long_about = LATEST_FILL)]
    LatestFill(LatestFill),
    /// Print what the program knows: processes, parameters, columns, units, sources, limits, keys
    #[command(long_about = EXPLAIN)]
    Explain(Explain),
    /// Print a completion script for your shell
    Completions(Completions),
    /// Print the manual page
    #[command(after_help = MANUAL)]
    Manual,
}

/// Options of `run`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill run my-tank.toml\n      \
        charts and tables in output/my-tank/, the answer on the terminal\n  \
        firstfill run my-tank.toml --out trial-b --every 10min --day 3 --day 21\n      \
        a folder of your own, a finer series.csv, and pictures of days 3 and 21\n  \
        firstfill run output/my-tank/manifest.json\n      \
        that run again, to the byte, even if my-tank.toml has changed since"
)]
pub struct Run {
    /// The scenario, a TOML file; or the manifest.json of an earlier run, to repeat it
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Folder to write; it must not exist yet [default: output/NAME-OF-THE-FILE]
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Replace the folder if it holds an earlier run
    #[arg(long)]
    pub force: bool,
    /// Leave the charts out; the tables are written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Time between two rows of series.csv: whole minutes, a multiple of 5 that divides 24 h [default: 60min]
    #[arg(long, value_name = "TIME", value_parser = minutes_between_rows)]
    pub every: Option<u32>,
    /// Draw the chart of this day; may be given more than once [default: the worst night]
    #[arg(long, value_name = "N")]
    pub day: Vec<u32>,
    /// How many plausible tanks the bands and the ready day are made of [default: 256]
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(FEWEST_MEMBERS..=MOST_MEMBERS), conflicts_with = "single")]
    pub members: Option<u32>,
    /// The central run only: no plausible tanks, no bands
    #[arg(long)]
    pub single: bool,
    /// Another draw of plausible tanks; the same seed gives the same tanks [default: 1]
    #[arg(long, value_name = "N", conflicts_with = "single")]
    pub seed: Option<u64>,
}

/// Fewer plausible tanks cannot tell 5 of 100 from 10.
const FEWEST_MEMBERS: i64 = 20;
/// More plausible tanks would be kept in more memory than a run should take.
const MOST_MEMBERS: i64 = 10_000;

impl Run {
    /// Minutes between two rows of `series.csv`.
    pub fn every(&self) -> u32 {
        self.every.unwrap_or(EVERY)
    }
    /// How many plausible tanks.
    pub fn members(&self) -> usize {
        self.members
            .map_or(USUAL_MEMBERS, |members| members as usize)
    }
    /// Where chance begins.
    pub fn seed(&self) -> u64 {
        self.seed.unwrap_or(USUAL_SEED)
    }
}

/// Minutes between two rows of `series.csv` when nothing else is said.
const EVERY: u32 = 60;

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

/// Options of `levers`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill levers my-tank.toml\n      \
        what brings the ready day nearer, the best first; the table in output/levers-my-tank/\n  \
        firstfill levers my-tank.toml --members 512 --out levers-b\n      \
        on more plausible tanks, in a folder of your own"
)]
pub struct Levers {
    /// The scenario, a TOML file
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Folder to write; it must not exist yet [default: output/levers-NAME-OF-THE-FILE]
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Replace the folder if it holds an earlier run
    #[arg(long)]
    pub force: bool,
    /// How many plausible tanks each lever is tried on
    #[arg(long, value_name = "N", default_value_t = levers::USUAL_MEMBERS as u32, value_parser = clap::value_parser!(u32).range(FEWEST_MEMBERS..=MOST_MEMBERS))]
    pub members: u32,
    /// Another draw of plausible tanks; the same seed gives the same tanks
    #[arg(long, value_name = "N", default_value_t = USUAL_SEED)]
    pub seed: u64,
}

impl Levers {
    /// How they are to be tried.
    pub fn trying(&self) -> levers::Trying {
        levers::Trying {
            members: self.members as usize,
            seed: self.seed,
        }
    }
}

/// Options of `latest-fill`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill latest-fill my-tank.toml --ready-by 2027-05-15\n      \
        how late it may be filled so that 90 of 100 plausible tanks are ready on that day\n  \
        firstfill latest-fill my-tank.toml --ready-by 2027-05-15 --of-100 50\n      \
        the same for 50 of 100"
)]
pub struct LatestFill {
    /// The scenario, a TOML file with a start
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The day by which tanks are to be ready: year-month-day
    #[arg(long, value_name = "DATE")]
    pub ready_by: Date,
    /// How many of 100 plausible tanks are to be ready
    #[arg(long, value_name = "N", default_value_t = 90, value_parser = clap::value_parser!(u8).range(1..=100))]
    pub of_100: u8,
    /// How many plausible tanks each plan is run on
    #[arg(long, value_name = "N", default_value_t = levers::USUAL_MEMBERS as u32, value_parser = clap::value_parser!(u32).range(FEWEST_MEMBERS..=MOST_MEMBERS))]
    pub members: u32,
    /// Another draw of plausible tanks; the same seed gives the same tanks
    #[arg(long, value_name = "N", default_value_t = USUAL_SEED)]
    pub seed: u64,
}

impl LatestFill {
    /// On which plausible tanks.
    pub fn trying(&self) -> levers::Trying {
        levers::Trying {
            members: self.members as usize,
            seed: self.seed,
        }
    }
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

const MINUTES_A_DAY: u32 = 24 * 60;
const STEP_MINUTES: u32 = 5;

/// Reads `60min`, `2h` or `30 min`.
pub(super) fn minutes_between_rows(text: &str) -> Result<u32, String> {
    let ways = "write whole minutes that are a multiple of 5 and divide 24 h, such as 5min, 10min, 30min, 60min or 6h";
    let text = text.trim();
    let split = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    let (digits, unit) = text.split_at(split);
    let factor = match unit.trim() {
        "min" | "minutes" => 1,
        "h" | "hours" => 60,
        "" => return Err(format!("\"{text}\" lacks its unit; {ways}")),
        _ => return Err(format!("\"{text}\" is not understood; {ways}")),
    };
    let minutes = digits
        .parse::<u32>()
        .ok()
        .and_then(|number| number.checked_mul(factor))
        .ok_or_else(|| format!("\"{text}\" is not understood; {ways}"))?;
    let fits = minutes > 0
        && minutes.is_multiple_of(STEP_MINUTES)
        && MINUTES_A_DAY.is_multiple_of(minutes);
    if fits {
        Ok(minutes)
    } else {
        Err(format!(
            "rows every {minutes} minutes do not fit a day; {ways}"
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_holds_together() {
        Line::command().debug_assert();
    }

    #[test]
    fn rows_come_every_so_many_minutes_or_hours() {
        let read = ["60min", "2h", "5 min", "1440min"].map(minutes_between_rows);
        assert_eq!(read, [Ok(60), Ok(120), Ok(5), Ok(1440)]);
    }

    #[test]
    fn intervals_that_do_not_fit_a_day_are_refused_with_ways_to_write_one() {
        for wrong in [
            "60",
            "7min",
            "25min",
            "0min",
            "1.5h",
            "soon",
            "99999999h",
            "48h",
        ] {
            let refusal = minutes_between_rows(wrong).unwrap_err();
            assert!(refusal.contains("5min, 10min"), "{wrong}: {refusal}");
        }
    }
}
