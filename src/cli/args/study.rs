//! The options of `study` and `gather`.

use std::num::NonZeroUsize;
use std::path::PathBuf;

use clap::Args;

use super::TableForm;
use super::into::Into;
use super::one_of::OneOf;
use crate::analysis::study::slice::Slice;
use crate::scenario::study::MOST_MEMBERS;

/// Options of `study`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill study scenarios/studies/what-matters.toml\n      \
        the study as its file has it\n  \
        firstfill study my-study.toml --members 64\n      \
        a first look with few members\n  \
        firstfill study my-study.toml --resume\n      \
        goes on where Ctrl-C, a kill or a power cut ended it\n  \
        firstfill study my-study.toml --shard 3/16 --resume\n      \
        the third of sixteen slices, on any machine; `firstfill gather` joins them"
)]
pub struct Study {
    /// The study, a TOML file; or the manifest.json of an earlier one, to repeat it
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// Go on with an unfinished study; begins it where there is none
    #[arg(long)]
    pub resume: bool,
    /// How many members, in place of what the file says
    #[arg(long, value_name = "N", value_parser = members)]
    pub members: Option<NonZeroUsize>,
    /// Another draw, in place of what the file says; the same seed gives the same study
    #[arg(long, value_name = "N")]
    pub seed: Option<u32>,
    /// How many threads [default: as many as there are cores]
    #[arg(long, value_name = "N")]
    pub threads: Option<NonZeroUsize>,
    /// Run one slice of N only
    #[arg(long, value_name = "K/N", value_parser = slice)]
    pub shard: Option<Slice>,
    /// Run it however much room its rows take
    #[arg(long)]
    pub yes: bool,
    /// How what is found is told.
    #[command(flatten)]
    pub told: Told,
}

/// Options of `gather`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill gather output/study-what-matters-*-of-16\n      \
        sixteen slices joined into output/study-what-matters\n  \
        firstfill gather slices/* --out results\n      \
        the same into a folder of your own"
)]
pub struct Gather {
    /// The folders of all slices, in any order
    #[arg(value_name = "DIR", required = true)]
    pub folders: Vec<PathBuf>,
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// How what is found is told.
    #[command(flatten)]
    pub told: Told,
}

/// How what is found is told.
#[derive(Debug, Clone, Copy, Args)]
pub struct Told {
    /// Leave the charts out; tables and verdict are written all the same
    #[arg(long)]
    pub no_charts: bool,
    /// Print indices.csv in this form instead of the screen
    #[arg(long, value_name = "FORM", value_parser = OneOf::<TableForm>::new())]
    pub format: Option<TableForm>,
}

/// A number of members as typed.
pub(in crate::cli) fn members(typed: &str) -> Result<NonZeroUsize, String> {
    let whole = || {
        format!(
            "a whole number of members from 1 to {MOST_MEMBERS} is allowed, for example --members 512"
        )
    };
    let members: NonZeroUsize = typed.parse().map_err(|_| whole())?;
    let is_allowed = members.get() <= MOST_MEMBERS as usize;
    is_allowed.then_some(members).ok_or_else(whole)
}

/// A slice as typed.
fn slice(typed: &str) -> Result<Slice, String> {
    let parts = typed.split_once('/');
    let numbers = parts.and_then(|(k, n)| Some((k.trim().parse().ok()?, n.trim().parse().ok()?)));
    let slice = numbers.and_then(|(number, of)| Slice::new(number, of));
    slice.ok_or_else(|| "write it like 3/16: the third slice of sixteen, counted from 1".into())
}
