//! What a study finds: worked out from its rows as they come, in memory that does not grow with their number.
//!
//! ```text
//! rows ─► members ─► variance · effects · one_at_a_time     sums, each with a hundred replicates for its interval
//!      └► sample  ─► ranked · regions · tail · sizes        the first rows that lie anywhere, for what needs them all
//!                    index       what all of it is told as: one number of one kind about one input
//!                    lead        which kind leads
//!                    judged      what matters, what may be ignored, what works together
//! ```
//!
//! A member with a failed row is left out of sums and counted. A ready day beyond the run counts as the day after the
//! last, so its indices are those of min(day, length); where that is so in more than three of ten rows, ranks lead, or
//! distances where there are none ([`lead`]). So they do where a few rows carry the variance ([`tail`]) and its shares
//! are not sure.

mod effects;
pub mod factor;
pub mod index;
pub mod judged;
pub mod lead;
mod members;
mod one_at_a_time;
mod ranked;
pub mod regions;
pub mod sample;
pub mod sizes;
mod sums;
pub mod tail;
mod variance;

use super::milestone::Milestone;
use super::{Row, Study};
use crate::base::moments::Moments;
use factor::Factor;
use index::{Index, Kind};
use members::Members;
use regions::Regions;
use sample::Sample;
use sizes::Size;
use sums::Sums;
use tail::Tail;

/// Rows that are kept for being drawn.
const DRAWN: usize = 2000;
/// Shares and means tell too little where a larger share of rows than this is not ready within the run.
pub const RANKS_LEAD: f64 = 0.3;

/// Gathers what a study finds, row by row, in the order of their numbers.
#[derive(Debug, Clone)]
pub struct Gathering {
    study: Study,
    counts: Counts,
    outputs: Vec<Outputs>,
    members: Members,
    sums: Sums,
    sample: Sample,
}

/// How many rows and members were seen.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Counts {
    /// Rows.
    pub rows: u64,
    /// Those that failed.
    pub failed: u64,
    /// Members all of whose rows came.
    pub members: u64,
    /// Those of them that are left out of sums because a row of theirs failed.
    pub left_out: u64,
}

/// All values of one milestone.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Outputs {
    /// Their mean, spread and ends.
    pub moments: Moments,
    /// How many are ready days beyond the run.
    pub beyond: u64,
}

/// What a study found.
#[derive(Debug, Clone, PartialEq)]
pub struct Findings {
    /// How many rows and members there were.
    pub counts: Counts,
    /// What indices are about: the inputs in their order, then groups where shares are told of these.
    pub factors: Vec<Factor>,
    /// What was found of each milestone, in their order.
    pub found: Vec<Found>,
    /// What the tanks that are ready by a day have in common; none where all are or none is.
    pub regions: Option<Regions>,
    /// Some of the rows that lie anywhere, for being drawn.
    pub points: Sample,
}

/// What was found of one milestone.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Which one.
    pub milestone: Milestone,
    /// Its values.
    pub outputs: Outputs,
    /// All that was worked out.
    pub indices: Vec<Index>,
    /// How sure it was at growing numbers of members.
    pub sizes: Vec<Size>,
    /// What a few rows bring to its variance, of those that are kept; none of too few, or where it never changes.
    pub tail: Option<Tail>,
}

impl Gathering {
    /// Nothing yet.
    pub fn new(study: &Study) -> Gathering {
        Gathering {
            counts: Counts::default(),
            outputs: vec![Outputs::default(); study.milestones.len()],
            members: Members::of(study),
            sums: Sums::new(study),
            sample: Sample::new(study),
            study: study.clone(),
        }
    }

    /// Takes in the next row.
    pub fn take(&mut self, row: &Row) {
        self.counts.rows += 1;
        self.counts.failed += u64::from(row.outputs.is_none());
        if let Some(outputs) = &row.outputs {
            self.see(row, outputs);
        }
        if let Some(member) = self.members.take(row) {
            self.counts.members += 1;
            match member.is_sound() || self.sums.takes_parts() {
                true => self
                    .sums
                    .take(&member, self.study.seed, self.counts.members),
                false => self.counts.left_out += 1,
            }
        }
    }

    fn see(&mut self, row: &Row, outputs: &[f64]) {
        let milestones = self.study.milestones.iter().zip(outputs);
        for (seen, (milestone, &output)) in self.outputs.iter_mut().zip(milestones) {
            seen.moments.add(output);
            seen.beyond += u64::from(self.study.is_beyond(milestone, output));
        }
        if sample::lies_anywhere(&self.study, row) {
            self.sample.take(&row.places, outputs);
        }
    }

    /// What is found by now.
    pub fn findings(&self) -> Findings {
        let milestones = self.study.milestones.iter().enumerate();
        let found = milestones.map(|(at, milestone)| Found {
            milestone: *milestone,
            outputs: self.outputs[at],
            indices: self.indices(at),
            sizes: self.sizes(at),
            tail: Tail::of(&self.sample.outputs(at)),
        });
        Findings {
            counts: self.counts,
            factors: factor::all(&self.study),
            found: found.collect(),
            regions: regions::of(&self.study, &self.sample),
            points: self.sample.first(DRAWN),
        }
    }

    fn indices(&self, milestone: usize) -> Vec<Index> {
        let mut indices = self.sums.indices(milestone);
        indices.extend(ranked::indices(&self.study, &self.sample, milestone));
        indices.retain(|index| index.value.is_finite());
        indices
    }

    /// Of the method itself, at its latest too; of methods that keep no sums, of their ranks.
    fn sizes(&self, milestone: usize) -> Vec<Size> {
        match self.sums {
            Sums::Nothing => ranked::sizes(&self.study, &self.sample, milestone),
            _ => self.sums.sizes(milestone, self.counts.members),
        }
    }
}

impl Found {
    /// The indices of a kind, in the order of what they are about.
    pub fn of(&self, kind: Kind) -> impl Iterator<Item = &Index> {
        self.indices.iter().filter(move |index| index.kind == kind)
    }

    /// The index of a kind about one factor.
    pub fn at(&self, kind: Kind, factor: usize) -> Option<&Index> {
        self.of(kind).find(|index| index.factor == factor)
    }

    /// The share of values that are ready days beyond the run; 0 of other milestones.
    pub fn share_beyond(&self) -> f64 {
        self.outputs.beyond as f64 / (self.outputs.moments.count().max(1)) as f64
    }

    /// Whether so many are beyond the run that shares and means tell too little.
    pub fn is_late(&self) -> bool {
        self.share_beyond() > RANKS_LEAD
    }

    /// What a few rows bring to the variance, where they carry it and shares of it, or mean effects, are not sure yet.
    pub fn carried_by_few(&self) -> Option<&Tail> {
        let of_variance = |index: &Index| matches!(index.kind, Kind::Total | Kind::MuStar);
        let hangs_on_it = self.indices.iter().any(of_variance);
        let is_sure = self.sizes.last().is_some_and(Size::is_done);
        let tail = self.tail.as_ref().filter(|tail| tail.is_heavy());
        tail.filter(|_| hangs_on_it && !is_sure)
    }
}
