//! The options of `sweep`.

use std::path::PathBuf;

use clap::Args;

use super::TableForm;
use super::into::Into;
use super::one_of::OneOf;
use super::plausible::how_many;
use crate::analysis::compare::Common;
use crate::analysis::forecast::USUAL_SEED;
use crate::analysis::sweep::USUAL_MEMBERS;
use crate::output::sweep::shown::names;
use crate::scenario::words::closest;

/// Options of `sweep`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill sweep my-tank.toml --vary 'changes.early.share=20 %..80 %:4'\n      \
        one value: the curves along it, and every milestone against it\n  \
        firstfill sweep my-tank.toml --vary changes.early.every=1..7:7 --vary 'changes.early.share=20 %..80 %:7'\n      \
        two values: a map of peak ammonia with litres and ready day in its cells\n  \
        firstfill sweep my-tank.toml --vary 'air.flow=0.2..2 L/min:5' --of oxygen_low_mg_per_l --of gas_used_g\n      \
        the figures you choose, the main one first"
)]
pub struct Sweep {
    /// The scenario, a TOML file; or the manifest.json of an earlier sweep, to repeat it
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// What to vary: a dotted path of the scenario, both ends with their unit, how many values. Once or twice
    #[arg(long, value_name = "PATH=FROM..TO:N")]
    pub vary: Vec<String>,
    /// A figure to draw and print, by its name in members.csv, the main one first; charts draw six, or three of a grid of two values [default: what tells
    /// most of what is varied]
    #[arg(long, value_name = "FIGURE", value_parser = figure)]
    pub of: Vec<String>,
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// Leave the charts out; the table is written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Write page.html too: charts, tables and words in one file for the browser, to be sent or printed
    #[arg(long)]
    pub page: bool,
    /// Print sweep.csv in this form instead of the screen
    #[arg(long, value_name = "FORM", value_parser = OneOf::<TableForm>::new())]
    pub format: Option<TableForm>,
    /// How many plausible tanks each point is run on [default: 50]
    #[arg(long, value_name = "N", value_parser = how_many)]
    pub members: Option<u32>,
    /// Another draw of plausible tanks; the same seed gives the same tanks [default: 1]
    #[arg(long, value_name = "N")]
    pub seed: Option<u64>,
    /// Run the grid however large it is
    #[arg(long)]
    pub yes: bool,
}

impl Sweep {
    /// The plausible tanks.
    pub fn common(&self) -> Common {
        Common {
            members: self
                .members
                .map_or(USUAL_MEMBERS, |members| members as usize),
            seed: self.seed.unwrap_or(USUAL_SEED),
        }
    }
}

/// The name of a figure as typed.
fn figure(typed: &str) -> Result<String, String> {
    let names = names();
    if names.iter().any(|name| name == typed) {
        return Ok(typed.to_string());
    }
    let near = closest(typed, names.iter().map(String::as_str));
    Err(match near {
        Some(near) => format!("there is no such figure; did you mean {near}?"),
        None => format!("there is no such figure; known: {}", names.join(", ")),
    })
}
