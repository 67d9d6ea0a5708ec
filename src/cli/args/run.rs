//! The options of `run`.

use std::path::PathBuf;

use clap::Args;

use super::interval::minutes_between_rows;
use super::into::Into;
use super::plausible::how_many;
use crate::analysis::forecast::{USUAL_MEMBERS, USUAL_SEED};

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
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// Leave the charts out; the tables are written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Write page.html too: charts, tables and words in one file for the browser, to be sent or printed
    #[arg(long)]
    pub page: bool,
    /// Print all there is to say, not one screen of it; the files are the same
    #[arg(long)]
    pub full: bool,
    /// Time between two rows of series.csv: whole minutes, a multiple of 5 that divides 24 h [default: 60min]
    #[arg(long, value_name = "TIME", value_parser = minutes_between_rows)]
    pub every: Option<u32>,
    /// Draw the chart of this day; may be given more than once [default: the worst night]
    #[arg(long, value_name = "N")]
    pub day: Vec<u32>,
    /// How many plausible tanks the bands and the ready day are made of [default: 256]
    #[arg(long, value_name = "N", value_parser = how_many, conflicts_with = "single")]
    pub members: Option<u32>,
    /// The central run only: no plausible tanks, no bands
    #[arg(long)]
    pub single: bool,
    /// Another draw of plausible tanks; the same seed gives the same tanks [default: 1]
    #[arg(long, value_name = "N", conflicts_with = "single")]
    pub seed: Option<u64>,
}

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
