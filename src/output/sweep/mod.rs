//! What a sweep leaves behind: a tidy table, charts, a manifest.

pub mod entries;
pub mod keys;
mod manifest;
pub mod range;
pub mod shown;
pub mod table;
pub mod words;

use crate::analysis::case::Case;
use crate::analysis::sweep::Sweep;

/// Everything the folder of a sweep is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The grid and what came of it.
    pub sweep: &'a Sweep,
    /// The figures that are drawn and said, as places in the lines of the sweep, the main one first.
    pub of: &'a [usize],
    /// The scenario as it is written.
    pub case: &'a Case,
    /// Name and text of its files, the one asked for first.
    pub files: &'a [(String, String)],
    /// What was asked for on the command line: name and value.
    pub options: &'a [(String, String)],
}
