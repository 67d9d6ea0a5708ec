//! What a step remembers of the one before.

use crate::base::real::Real;

/// How much finer steps are cut at most where processes are held back, and what is left of that after a
/// step without.
const CLOSEST: f64 = 16.0;
const RELIEF: f64 = 0.9;

/// What a step remembers of the one before: where to look for the next pH first, and how finely to cut.
/// Part of the state of a tank that is saved, since the last bits of a pH hang on where the search began.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Memory<R> {
    /// Activity of H+ at the end of the last part, mol/L.
    pub hydrogen: R,
    /// How much H+ changed from the start to the middle of the last part, as a factor.
    pub drift: R,
    /// How many times as many parts a step is cut into as the rule says, where processes had to be held
    /// back not long ago; 1 elsewhere.
    pub closer: R,
}

impl<R: Real> Memory<R> {
    /// Nothing remembered: the search begins at pH 7.
    pub fn fresh() -> Self {
        Memory {
            hydrogen: R::of(1e-7),
            drift: R::one(),
            closer: R::one(),
        }
    }
    /// What one lane remembers.
    pub(super) fn lane(&self, lane: usize) -> Memory<f64> {
        Memory {
            hydrogen: self.hydrogen.lane(lane),
            drift: self.drift.lane(lane),
            closer: self.closer.lane(lane),
        }
    }
    /// Lets a lane remember something else.
    pub(super) fn set_lane(&mut self, lane: usize, other: Memory<f64>) {
        self.hydrogen.set_lane(lane, other.hydrogen);
        self.drift.set_lane(lane, other.drift);
        self.closer.set_lane(lane, other.closer);
    }

    /// Cuts the coming steps finer in the lanes in which processes were held back (`strained` above
    /// nothing), and less and less so in the others.
    #[inline(always)]
    pub(super) fn look_closer(&mut self, strained: R) {
        let now = (R::of(2.0) * self.closer).least(R::of(CLOSEST));
        let later = (R::of(RELIEF) * self.closer).most(R::one());
        self.closer = R::pick(R::zero().below(strained), now, later);
    }
}
