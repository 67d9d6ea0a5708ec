//! Calendars that were found: as scenario files ready to use, and as tables.

pub mod entries;
mod scenario_file;
mod table;

use std::path::Path;

use crate::analysis::calendar::Found;
use crate::output::manifest;

pub use table::table;

/// What is written and told of a search.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The run of the plan as written, its files and the options.
    pub plan: manifest::Story<'a>,
    /// The scenario file as it was named.
    pub file: &'a Path,
    /// The folder that is written, as it was asked for.
    pub folder: &'a Path,
    /// What was found.
    pub found: &'a Found,
}
