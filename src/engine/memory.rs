//! What a step remembers of the one before.

use crate::base::real::Real;

/// How much finer steps are cut at most where a pool runs short, and what is left of that after a step in which none
/// does (judgement: of 0.5, 0.7 and 0.9 the one with the fewest parts).
const CLOSEST: f64 = 16.0;
const RELIEF: f64 = 0.7;

/// What a step remembers of the one before: where to look for the next pH first, and how finely to cut.
/// Part of the state of a tank that is saved, since the last bits of a pH hang on where the search began.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Memory<R> {
    /// Activity of H+ at the end of the last part, mol/L.
    pub hydrogen: R,
    /// How much H+ changed from the start to the middle of the last part, as a factor.
    pub drift: R,
    /// How many times as many parts a step is cut into as the rule says, where a pool ran short
    /// not long ago; 1 elsewhere.
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

    /// In which lanes parts may still be cut finer.
    #[inline(always)]
    pub(super) fn may_look_closer(&self) -> R::Mask {
        self.closer.below(R::of(CLOSEST))
    }

    /// Cuts parts twice as fine in some lanes.
    #[inline(always)]
    pub(super) fn look_closer(&mut self, again: R::Mask) {
        let closer = (self.closer + self.closer).least(R::of(CLOSEST));
        self.closer = R::pick(again, closer, self.closer);
    }

    /// Cuts less and less fine in the lanes in which nothing ran short (`strained` is nothing).
    #[inline(always)]
    pub(super) fn relieve(&mut self, strained: R) {
        let later = (R::of(RELIEF) * self.closer).most(R::one());
        self.closer = R::pick(R::zero().below(strained), self.closer, later);
    }
}
