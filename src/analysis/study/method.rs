//! How the runs of a study are laid out.

use super::Study;
use super::input::Reach;
use crate::analysis::sensitivity::latin;
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

/// Where an input stands that is left in its middle.
const MIDDLE: f64 = 0.5;
/// Runs per input that ranks need: with fewer a partial correlation is mostly chance (judgement).
const RUNS_PER_INPUT: usize = 4;
/// Fewest runs of a cloud of points: tenths of them hold some each (judgement).
const FEWEST_POINTS: usize = 40;

impl Method {
    /// The words of the methods in study files, in the order of [`Method::usual`].
    pub const WORDS: [&str; 5] = [
        "variance",
        "trajectories",
        "points",
        "latin",
        "one at a time",
    ];

    /// The methods as they are when nothing else is said.
    pub fn usual() -> [Method; 5] {
        let (second_order, by) = (false, By::Input);
        [
            Method::Variance { second_order, by },
            Method::Trajectories { levels: 4 },
            Method::Points,
            Method::Latin,
            Method::OneAtATime,
        ]
    }

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Method::Variance { .. } => Method::WORDS[0],
            Method::Trajectories { .. } => Method::WORDS[1],
            Method::Points => Method::WORDS[2],
            Method::Latin => Method::WORDS[3],
            Method::OneAtATime => Method::WORDS[4],
        }
    }

    /// How many members there are when nothing else is said (judgement: enough to see what matters most).
    pub fn usual_members(self) -> usize {
        match self {
            Method::Variance { .. } => 1024,
            Method::Trajectories { .. } => 64,
            Method::Points | Method::Latin => 4096,
            Method::OneAtATime => 9,
        }
    }

    /// Fewest members that say anything, and why.
    pub fn fewest_members(self, inputs: usize) -> (usize, &'static str) {
        match self {
            Method::Variance { .. } => (
                16,
                "its intervals are drawn from the members, and fewer are mostly chance",
            ),
            Method::Trajectories { .. } => (4, "a spread of effects takes a handful of them"),
            Method::Points | Method::Latin => (
                FEWEST_POINTS.max(RUNS_PER_INPUT * inputs),
                "ranks take four runs for every input, and forty in all",
            ),
            Method::OneAtATime => (2, "an input goes from one end to the other"),
        }
    }

    /// Whether inputs that hang on each other spoil it: it gives each a share of its own.
    pub fn needs_free_inputs(self) -> bool {
        matches!(self, Method::Variance { .. } | Method::Trajectories { .. })
    }

    /// How far inputs go: designs that go to both ends stop at the 5 % and the 95 % point.
    pub fn reach(self) -> Reach {
        match self {
            Method::OneAtATime | Method::Trajectories { .. } => Reach::Walked,
            Method::Points | Method::Latin | Method::Variance { .. } => Reach::All,
        }
    }

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
            Method::Latin => (0..inputs)
                .map(|input| latin::Column::of(seed, input as u64, study.members as u64).at(member))
                .collect(),
            Method::OneAtATime => {
                let last = study.members.saturating_sub(1).max(1) as f64;
                let step = member as f64 / last;
                let at = |input| if input == place { step } else { MIDDLE };
                (0..inputs).map(at).collect()
            }
        }
    }
}
