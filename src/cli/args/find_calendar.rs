//! The options of `find-calendar`.

use std::path::PathBuf;

use clap::{Args, ValueEnum};

use super::compare::TableForm;
use super::into::Into;
use super::one_of::OneOf;
use super::plausible::how_many;
use crate::analysis::calendar::wish::{self, Least, Trying};
use crate::analysis::forecast::USUAL_SEED;

/// Options of `find-calendar`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill find-calendar my-tank.toml --least litres\n      \
        the changes that keep what [calendar] asks for with least water, as scenario files\n  \
        firstfill find-calendar my-tank.toml --least visits --out fewer\n      \
        with as few visits as will do, in a folder of your own"
)]
pub struct FindCalendar {
    /// The scenario, a TOML file with a section on its calendar
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// What there should be least of
    #[arg(long, value_name = "WHAT", value_parser = OneOf::<LeastOf>::new())]
    pub least: LeastOf,
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// Leave the chart out; the scenario files and the table are written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Print choices.csv in this form instead of the screen
    #[arg(long, value_name = "FORM", value_parser = OneOf::<TableForm>::new())]
    pub format: Option<TableForm>,
    /// How many plausible tanks the search looks at; choices are scored on four times as many others
    #[arg(long, value_name = "N", default_value_t = wish::USUAL_MEMBERS as u32, value_parser = how_many)]
    pub members: u32,
    /// Another draw of plausible tanks; the same seed gives the same tanks
    #[arg(long, value_name = "N", default_value_t = USUAL_SEED)]
    pub seed: u64,
}

/// What there should be least of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum LeastOf {
    /// Litres changed in all
    Litres,
    /// Changes of water
    Visits,
    /// Days until ready, on the mean
    ReadyDay,
}

/// So many members are fresh for each that the search looks at.
const FRESH: usize = wish::FRESH_MEMBERS / wish::USUAL_MEMBERS;

impl FindCalendar {
    /// How calendars are to be tried.
    pub fn trying(&self) -> Trying {
        let members = self.members as usize;
        Trying {
            least: match self.least {
                LeastOf::Litres => Least::Litres,
                LeastOf::Visits => Least::Visits,
                LeastOf::ReadyDay => Least::ReadyDay,
            },
            members,
            fresh: FRESH * members,
            seed: self.seed,
            most_runs: wish::MOST_RUNS / wish::USUAL_MEMBERS * members,
        }
    }
}
