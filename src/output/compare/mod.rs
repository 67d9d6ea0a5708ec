//! What a comparison leaves behind: tables, charts, a manifest, and words that say why.

mod capacity_words;
pub mod entries;
pub mod keys;
mod manifest;
mod members;
pub mod others;
pub mod paragraph;
pub mod table;

use crate::analysis::compare::Comparison;

/// Name and text of scenario files, the one asked for first.
pub type Texts = Vec<(String, String)>;

/// Everything the folder of a comparison is made from.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// The plans and what came of them.
    pub comparison: &'a Comparison<'a>,
    /// The files of each plan.
    pub files: &'a [Texts],
    /// What was asked for on the command line: name and value.
    pub options: &'a [(String, String)],
}
