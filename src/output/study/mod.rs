//! What a study leaves behind beside its rows: what was found, as tables, charts and a verdict in words.
//!
//! ```text
//! indices · convergence · regions    tidy tables; per_milestone has what the first two share
//! words                              names, shares and numbers as people read them
//! numbers                            with as many digits as count
//! leads                              which number leads, and why
//! verdict                            what matters, and what may be ignored
//! ready                              what the tanks that are ready by a day have in common
//! sureness                           how sure that is
//! entries                            all of it as files
//! ```

pub mod convergence;
pub mod entries;
pub mod indices;
pub mod leads;
pub mod numbers;
mod per_milestone;
pub mod ready;
pub mod regions;
pub mod sureness;
pub mod verdict;
pub mod words;

use crate::analysis::study::Study;
use crate::analysis::study::findings::{Findings, Found};

/// Everything that is told of a study.
#[derive(Debug, Clone, Copy)]
pub struct Story<'a> {
    /// Its name.
    pub name: &'a str,
    /// What it asks.
    pub study: &'a Study,
    /// What was found.
    pub findings: &'a Findings,
}

impl<'a> Story<'a> {
    /// What was found of the milestone that is told first.
    pub fn main(&self) -> Option<&'a Found> {
        self.findings.found.first()
    }
}
