//! The folder that a command writes.

use std::path::{Path, PathBuf};

use clap::Args;

use crate::output::place::Place;

/// Where the results go.
#[derive(Debug, Clone, Args)]
pub struct Into {
    /// Folder to write; it must not exist yet [default: in output/, named after the command and its files]
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Replace the folder if it holds an earlier run
    #[arg(long)]
    pub force: bool,
}

impl Into {
    /// The place asked for, or the usual one.
    pub fn place(&self, usual: &Path) -> Place {
        Place::asked(self.out.as_deref(), self.force, usual)
    }
    /// The same of a command about one file: usually `output/<command>-<name of the file>`.
    pub fn place_of(&self, command: &str, file: &Path) -> Place {
        Place::of_file(self.out.as_deref(), self.force, command, file)
    }
}
