//! Lowest, highest and mean of something on one day, in one tank or in several side by side.

use crate::base::real::Real;

/// Lowest, highest and mean of a day under way.
#[derive(Debug, Clone, Copy)]
pub struct DayOf<R = f64> {
    /// Lowest so far.
    pub low: R,
    /// Highest so far.
    pub high: R,
    area: R,
    minutes: f64,
    last: (u32, R),
}

impl<R: Real> DayOf<R> {
    /// A day that opens with a value at a minute.
    #[inline(always)]
    pub fn opening(minute: u32, value: R) -> Self {
        DayOf {
            low: value,
            high: value,
            area: R::zero(),
            minutes: 0.0,
            last: (minute, value),
        }
    }
    /// Sees the value at a later minute, or on the other side of an event.
    #[inline(always)]
    pub fn see(&mut self, minute: u32, value: R) {
        let (before, was) = self.last;
        let length = f64::from(minute - before);
        self.low = self.low.least(value);
        self.high = self.high.most(value);
        self.area += R::of(length) * (was + value) * R::of(0.5);
        self.minutes += length;
        self.last = (minute, value);
    }
    /// The mean by time, straight lines between values; the value itself when there is no time.
    #[inline(always)]
    pub fn mean(&self) -> R {
        if self.minutes > 0.0 {
            self.area / R::of(self.minutes)
        } else {
            self.last.1
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_mean_is_that_of_straight_lines_and_a_jump_weighs_nothing() {
        // an hour at 1, a jump to 3, an hour down to 1: (1 + 2) / 2
        let mut day = DayOf::opening(0, 1.0);
        day.see(60, 1.0);
        day.see(60, 3.0);
        day.see(120, 1.0);
        assert_eq!((day.low, day.high, day.mean()), (1.0, 3.0, 1.5));
        assert_eq!(DayOf::opening(7, 2.5).mean(), 2.5);
    }
}
