//! The options of `levers`.

use std::path::PathBuf;

use clap::Args;

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
    /// Folder to write; it must not exist yet [default: output/levers-NAME-OF-THE-FILE]
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Replace the folder if it holds an earlier run
    #[arg(long)]
    pub force: bool,
    /// The plausible tanks.
    #[command(flatten)]
    pub on: Plausible,
}
