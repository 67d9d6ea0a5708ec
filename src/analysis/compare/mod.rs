//! Plans side by side, on common members: member 17 is the same unknown tank in every one of them.
//!
//! Start at [`Comparison::of`]. What a parameter draws hangs on seed, member and its own dimension, what a path
//! of the scenario draws on its name (`uncertain`), never on the rest of a file; so two plans differ, member by
//! member, in what their files say and in nothing else.
//!
//! ```text
//! strategy      one plan: its central run, its members, who is ready by when
//! lines         one figure of all plans, with the best and the worst       value   what stands in one cell
//! alike         plans whose difference may be chance
//! versus        two plans pair by pair: who is ready before whom           effect  any figure pair by pair
//! differences   what the files say otherwise, from what to what
//! nitrogen      where it went                                              why     facts that decide
//! capacity      what the microbes could oxidise, and when
//! ```

pub mod alike;
pub mod capacity;
pub mod differences;
pub mod effect;
pub mod lines;
pub mod nitrogen;
pub mod strategy;
pub mod value;
pub mod versus;
pub mod why;

use thiserror::Error;

use crate::base::stop::Stop;
use crate::engine::error::RunError;

use super::case::Case;
use super::ensemble::EnsembleError;
use differences::{Difference, differences};
use lines::{Line, lines};
use strategy::Strategy;
use versus::Versus;

/// Fewest plans that can be held against each other.
pub const FEWEST: usize = 2;
/// Most plans that can be held against each other: more fit on no screen and no page.
pub const MOST: usize = 8;

/// A plan that is to be compared.
#[derive(Debug, Clone)]
pub struct Entrant<'a> {
    /// A short name, unlike those of the others.
    pub key: String,
    /// The plan.
    pub case: &'a Case,
}

/// The plausible tanks plans are held against each other on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Common {
    /// How many.
    pub members: usize,
    /// Where chance begins: the same seed gives the same tanks.
    pub seed: u64,
}

/// Plans side by side.
#[derive(Debug, Clone)]
pub struct Comparison<'a> {
    /// The plausible tanks.
    pub common: Common,
    /// The last day of all of them.
    pub last_day: u32,
    /// The plans, in the order given.
    pub strategies: Vec<Strategy<'a>>,
    /// Every figure of all plans.
    pub lines: Vec<Line>,
    /// Every plan against every other one, in the order of the plans.
    pub pairs: Vec<Versus>,
    /// What the files say otherwise.
    pub differences: Vec<Difference>,
}

/// Why there is no result.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CompareError {
    /// The central run of a plan failed.
    #[error("{key}: {why}")]
    Central {
        /// The plan.
        key: String,
        /// Why.
        why: Box<RunError>,
    },
    /// The members of a plan failed, or somebody wished to stop.
    #[error("{key}: {why}")]
    Members {
        /// The plan.
        key: String,
        /// Why.
        why: Box<EnsembleError>,
    },
}

impl<'a> Comparison<'a> {
    /// Runs all plans on the same members; `progress` hears how many runs are done, of how many. The plans
    /// must be of one length.
    ///
    /// # Errors
    /// When somebody wishes to stop, a central run fails, or too many members of a plan do.
    pub fn of(
        entrants: &[Entrant<'a>],
        common: Common,
        stop: &Stop,
        mut progress: impl FnMut(usize, usize),
    ) -> Result<Comparison<'a>, CompareError> {
        let in_all = entrants.len() * common.members;
        let mut strategies = Vec::with_capacity(entrants.len());
        for (place, entrant) in entrants.iter().enumerate() {
            let before = place * common.members;
            let mut done = |done| progress(before + done, in_all);
            strategies.push(Strategy::of(entrant, common, stop, &mut done)?);
        }
        Ok(Comparison::between(strategies, common))
    }
    /// Holds plans that have been run against each other.
    pub fn between(strategies: Vec<Strategy<'a>>, common: Common) -> Comparison<'a> {
        let last_day = strategies.first().map_or(0, |s| s.case.input.last_day);
        Comparison {
            common,
            last_day,
            lines: lines(&strategies),
            pairs: versus::all(&strategies, last_day),
            differences: differences(&strategies),
            strategies,
        }
    }
    /// One plan held against another one; none against itself.
    pub fn versus(&self, of: usize, against: usize) -> Option<&Versus> {
        let mut pairs = self.pairs.iter();
        pairs.find(|pair| (pair.of, pair.against) == (of, against))
    }
}
