//! What a step remembers of the one before.

use crate::base::real::Real;

/// How much finer steps are cut at most where a pool runs short, and what is left of that after a step in which none
/// does (judgement: of 0.5, 0.7 and 0.9 the one with the fewest parts).
const CLOSEST: f64 = 16.0;
const RELIEF: f64 = 0.7;
/// How many times as finely gas exchange is cut right after something is switched or happens, and what is left of that
/// after each step (judgement: of twelve pairs, the one with the fewest parts that keeps every shipped scenario within
/// a quarter of a line; what strong air sets off fades by half within the hour).
const STIRRED: f64 = 4.0;
const CALMS: f64 = 0.84;

/// What a step remembers of those before: where to look for the next pH first, and how finely to cut.
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
    /// How many times as finely gas exchange is cut since something was switched or happened not long ago;
    /// 1 elsewhere.
    pub stirred: R,
}

impl<R: Real> Memory<R> {
    /// Nothing remembered: the search begins at pH 7.
    pub fn fresh() -> Self {
        Memory {
            hydrogen: R::of(1e-7),
            drift: R::one(),
            closer: R::one(),
            stirred: R::one(),
        }
    }
    /// What one lane remembers.
    pub(super) fn lane(&self, lane: usize) -> Memory<f64> {
        Memory {
            hydrogen: self.hydrogen.lane(lane),
            drift: self.drift.lane(lane),
            closer: self.closer.lane(lane),
            stirred: self.stirred.lane(lane),
        }
    }
    /// Lets a lane remember something else.
    pub(super) fn set_lane(&mut self, lane: usize, other: Memory<f64>) {
        self.hydrogen.set_lane(lane, other.hydrogen);
        self.drift.set_lane(lane, other.drift);
        self.closer.set_lane(lane, other.closer);
        self.stirred.set_lane(lane, other.stirred);
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

    /// Notes where something has been switched or has happened.
    #[inline(always)]
    pub(super) fn stir(&mut self, here: R::Mask) {
        self.stirred = R::pick(here, R::of(STIRRED), self.stirred);
    }

    /// After a step, cuts less and less fine: where things move less since something was switched, and in the lanes
    /// in which nothing ran short (`strained` is nothing).
    #[inline(always)]
    pub(super) fn relieve(&mut self, strained: R) {
        self.stirred = (R::of(CALMS) * self.stirred).most(R::one());
        let later = (R::of(RELIEF) * self.closer).most(R::one());
        self.closer = R::pick(R::zero().below(strained), self.closer, later);
    }
}
