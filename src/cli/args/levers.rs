//! The options of `levers`.

use std::path::PathBuf;

use clap::Args;

use super::into::Into;
use super::plausible::Plausible;

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
    /// Where the results go.
    #[command(flatten)]
    pub into: Into,
    /// The plausible tanks.
    #[command(flatten)]
    pub on: Plausible,
}
