//! The highest or lowest of something, in one tank or in several side by side.

use crate::base::real::Real;

use super::milestones::Extreme;

/// The highest or lowest value seen so far, with when; the earliest instant on a tie.
#[derive(Debug, Clone, Copy)]
pub struct Peak<R = f64> {
    /// 1 for the highest, −1 for the lowest.
    sign: f64,
    best: R,
    minute: R,
}

impl<R: Real> Peak<R> {
    /// Looks for the highest.
    pub fn highest() -> Self {
        Self::of(1.0)
    }
    /// Looks for the lowest.
    pub fn lowest() -> Self {
        Self::of(-1.0)
    }
    fn of(sign: f64) -> Self {
        Peak {
            sign,
            best: R::of(f64::NEG_INFINITY),
            minute: R::zero(),
        }
    }
    /// Sees a value.
    #[inline(always)]
    pub fn see(&mut self, minute: u32, value: R) {
        let value = R::of(self.sign) * value;
        let beats = self.best.below(value);
        self.best = R::pick(beats, value, self.best);
        self.minute = R::pick(beats, R::of(f64::from(minute)), self.minute);
    }
    /// What it is in one lane; infinite where nothing was seen.
    pub fn lane(&self, lane: usize) -> Extreme {
        Extreme {
            value: self.sign * self.best.lane(lane),
            minute: self.minute.lane(lane) as u32,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::lanes::Lanes;

    #[test]
    fn the_earliest_of_equals_counts_in_every_lane_by_itself() {
        let mut low = Peak::<Lanes<2>>::lowest();
        for (minute, values) in [(10, [3.0, 2.0]), (20, [1.0, 2.0]), (30, [1.0, 5.0])] {
            low.see(minute, Lanes(values));
        }
        let seen = [low.lane(0), low.lane(1)].map(|low| (low.value, low.minute));
        assert_eq!(seen, [(1.0, 20), (2.0, 10)]);
    }
}
