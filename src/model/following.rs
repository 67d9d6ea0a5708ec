//! The course of a pool that follows something with a lag, within a part of a step.
//!
//! A colour liquid settles within an hour or two, faster than anything else that has no part of its own in a
//! step, and nothing hangs on it: so it is worked out behind the looks at the tank, exactly for a parabola through
//! what it follows.
//!
//! ```text
//! dI/dt = k·(C − I)      C(θ) = C₀ + b·θ + a·θ²,  θ from 0 to 1 over the part      z = k·Δt
//! I(1) − I₀ = a + B + D·(1 − e^(−z))      B = b − 2a/z      D = C₀ − I₀ − B/z      (by hand)
//! ```

use crate::base::real::Real;

/// Something that follows with a lag.
#[derive(Debug, Clone, Copy)]
pub struct Following<R> {
    /// k, per day.
    pub per_day: R,
    /// I₀: where it stands at the start.
    pub from: R,
}

impl<R: Real> Following<R> {
    /// How fast it moves on the whole, per day, given what it follows at the start, in the middle and at the end
    /// of so many days.
    #[inline(always)]
    pub fn on_the_whole(&self, [start, middle, end]: [R; 3], days: R) -> R {
        let (two, four) = (R::of(2.0), R::of(4.0));
        let bend = two * (start + end) - four * middle;
        let slope = (end - start) - bend;
        let turns = self.per_day * days;
        let per_turn = R::one() / turns;
        let lagging_slope = slope - two * bend * per_turn;
        let behind = start - self.from - lagging_slope * per_turn;
        let moved = bend + lagging_slope + behind * (R::one() - (-turns).exp());
        moved / days
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::maths;

    const HOUR: f64 = 1.0 / 24.0;

    #[test]
    fn what_stands_still_is_followed_exponentially() {
        let following = Following {
            per_day: 16.0,
            from: 10.0,
        };
        let moved = following.on_the_whole([30.0; 3], HOUR) * HOUR;
        let exact = 20.0 * (1.0 - maths::exp(-16.0 * HOUR));
        assert!((moved - exact).abs() < 1e-13, "{moved} {exact}"); // rounding
    }

    #[test]
    fn what_bends_is_followed_as_by_steps_ten_thousand_times_finer() {
        let (per_day, from) = (16.0, 12.0);
        let follows = |at: f64| 20.0 + 9.0 * at - 4.0 * at * at;
        let fine = 10_000;
        let step = HOUR / f64::from(fine);
        let end = (0..fine).fold(from, |shown, number| {
            let middle = follows((f64::from(number) + 0.5) / f64::from(fine));
            // implicit midpoint: what is left is a twelfth of (k·step)³ per step, 3e-13 in all
            let half = 0.5 * per_day * step;
            (shown * (1.0 - half) + 2.0 * half * middle) / (1.0 + half)
        });
        let looks = [0.0, 0.5, 1.0].map(follows);
        let moved = Following { per_day, from }.on_the_whole(looks, HOUR) * HOUR;
        // the finer steps are off by (k·step)²/24 of some ten, 2e-9
        assert!((from + moved - end).abs() < 1e-8, "{} {end}", from + moved);
    }
}
