//! Which plausible tanks the levers and the latest filling are tried on.

use clap::Args;

use crate::analysis::forecast::USUAL_SEED;
use crate::analysis::levers::{Trying, USUAL_MEMBERS};

/// Fewer plausible tanks cannot tell 5 of 100 from 10.
const FEWEST_MEMBERS: u32 = 20;
/// More plausible tanks would be kept in more memory than a run should take.
const MOST_MEMBERS: u32 = 10_000;

/// A number of plausible tanks as typed.
pub(in crate::cli) fn how_many(typed: &str) -> Result<u32, String> {
    let allowed = FEWEST_MEMBERS..=MOST_MEMBERS;
    let members = typed
        .parse()
        .ok()
        .filter(|members| allowed.contains(members));
    members.ok_or_else(|| {
        format!("a whole number from {FEWEST_MEMBERS} to {MOST_MEMBERS} is allowed, for example --members 512")
    })
}

/// How many plausible tanks, and which.
#[derive(Debug, Clone, Copy, Args)]
pub struct Plausible {
    /// How many plausible tanks each plan is tried on
    #[arg(long, value_name = "N", default_value_t = USUAL_MEMBERS as u32, value_parser = how_many)]
    pub members: u32,
    /// Another draw of plausible tanks; the same seed gives the same tanks
    #[arg(long, value_name = "N", default_value_t = USUAL_SEED)]
    pub seed: u64,
}

impl Plausible {
    /// The same for those who try.
    pub fn trying(self) -> Trying {
        Trying {
            members: self.members as usize,
            seed: self.seed,
        }
    }
}
