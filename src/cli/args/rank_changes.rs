//! The options of `rank-changes`.

use std::path::PathBuf;

use clap::Args;

use super::compare::TableForm;
use super::into::Into;
use super::one_of::OneOf;
use super::plausible::how_many;
use crate::analysis::compare::Common;
use crate::analysis::forecast::{USUAL_MEMBERS, USUAL_SEED};

/// Options of `rank-changes`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill rank-changes my-tank.toml\n      \
        what each change is worth, and which may go; tables and a chart in output/rank-changes-my-tank/\n  \
        firstfill rank-changes my-tank.toml --format csv > changes.csv\n      \
        the table instead of the screen; the folder is written all the same"
)]
pub struct RankChanges {
    /// The scenario, a TOML file
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// Leave the chart out; the tables are written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Print changes.csv in this form instead of the screen
    #[arg(long, value_name = "FORM", value_parser = OneOf::<TableForm>::new())]
    pub format: Option<TableForm>,
    /// How many plausible tanks each plan is run on
    #[arg(long, value_name = "N", default_value_t = USUAL_MEMBERS as u32, value_parser = how_many)]
    pub members: u32,
    /// Another draw of plausible tanks; the same seed gives the same tanks
    #[arg(long, value_name = "N", default_value_t = USUAL_SEED)]
    pub seed: u64,
}

impl RankChanges {
    /// The plausible tanks.
    pub fn common(&self) -> Common {
        Common {
            members: self.members as usize,
            seed: self.seed,
        }
    }
}
