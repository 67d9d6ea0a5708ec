//! How the runs of a study are laid out.

use super::Study;
use crate::analysis::sensitivity::trajectories::Trajectories;
use crate::base::sobol::Shifted;

/// How the runs of a study are laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Method {
    /// Each input alone from end to end, the others in their middle: `members` steps of each.
    OneAtATime,
    /// Sobol' points: one run a member.
    Points,
    /// A Latin hypercube: one run a member.
    Latin,
    /// Morris' trajectories: a run more than there are inputs, each.
    Trajectories {
        /// How many levels, an even number.
        levels: usize,
    },
    /// Two clouds of Sobol' points and what stands between them, for shares of the variance.
    Variance {
        /// Whether pairs are asked for too.
        second_order: bool,
        /// What goes from one cloud to the other as one.
        by: By,
    },
}

/// What a share of the variance is told of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// Each input.
    Input,
    /// Each group, all of its inputs together.
    Group,
}

impl Method {
    /// How many runs a member takes.
    pub fn rows_per_member(self, study: &Study) -> usize {
        match self {
            Method::OneAtATime => study.inputs.len(),
            Method::Points | Method::Latin => 1,
            Method::Trajectories { .. } => study.inputs.len() + 1,
            Method::Variance { second_order, .. } => study.design(second_order).rows(),
        }
    }

    /// Whether its runs are looked at by their ranks alone.
    pub fn ranks_alone(self) -> bool {
        matches!(self, Method::Points | Method::Latin)
    }

    /// Where the inputs of one row of a member stand, each between 0 and 1.
    pub(super) fn places(self, study: &Study, member: u64, place: usize) -> Vec<f64> {
        let (inputs, seed) = (study.inputs.len(), study.seed);
        let sobol = |dimension: usize| Shifted::of(seed, dimension).at(member as u32);
        match self {
            Method::Points => (0..inputs).map(sobol).collect(),
            Method::Trajectories { levels } => {
                let design = Trajectories {
                    inputs,
                    levels,
                    seed,
                };
                let levels = design.draw(member).points.swap_remove(place);
                levels
                    .into_iter()
                    .map(|level| design.coordinate(level))
                    .collect()
            }
            Method::Variance { second_order, .. } => {
                let row = study.design(second_order).row(place);
                let blocks = study.blocks().into_iter().enumerate();
                let at = |(input, block)| input + if row.is_of_b(block) { inputs } else { 0 };
                blocks.map(|block| sobol(at(block))).collect()
            }
            Method::OneAtATime | Method::Latin => todo!(),
        }
    }
}
