//! What can be uncertain in the scenarios of a study, by name.

use crate::analysis::case::Case;
use crate::analysis::uncertain::{Kept, Uncertain, Varied};

/// What can be uncertain in any of the scenarios.
pub struct Known {
    /// What varies, each name once.
    pub rows: Vec<Varied>,
    kept: Vec<Kept>,
}

impl Known {
    /// What can be uncertain in these.
    pub fn of(cases: &[Case]) -> Known {
        let mut known = Known {
            rows: Vec::new(),
            kept: Vec::new(),
        };
        for uncertain in cases.iter().map(Uncertain::of) {
            for row in uncertain.rows() {
                if known.row(&row.name).is_none() {
                    known.rows.push(row.clone());
                }
            }
            known.kept.extend(uncertain.kept().iter().cloned());
        }
        known
    }
    /// What varies under a name.
    pub fn row(&self, name: &str) -> Option<&Varied> {
        self.rows.iter().find(|row| row.name == name)
    }
    /// Why something of a name stays as it is.
    pub fn why_kept(&self, name: &str) -> Option<&'static str> {
        let kept = self.kept.iter().find(|kept| kept.name == name);
        kept.map(|kept| kept.why)
    }
}
