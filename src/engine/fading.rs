//! Rates that fade within a part of a step, and how much comes of them.
//!
//! Of a rate is known what it is at the start, in the middle and at the end of a part of length Δt, and that it
//! fades as fast as e^(−z·θ), θ from 0 to 1. It is taken to be a sum of three courses, one that stays, one that goes
//! straight and one that fades, which has its values at all three:
//!
//! ```text
//! extent/Δt = w·r₀ + v·r₁ + w·r₂      w = (1 − v)/2
//! v = (1 + e^(−z) − 2·(1 − e^(−z))/z) / (1 − e^(−z/2))²
//! ```
//! The weights are exact for the three courses (by hand); they tend to Simpson's (1 : 4 : 1)/6 as z tends to
//! nothing, and to those of a straight line as it grows. Not for z below 0.01, where differences of nearly equal
//! numbers are left.

use crate::base::real::Real;

/// How fast a rate fades within a part.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fading<R> {
    /// z.
    turns: R,
    /// e^(−z/2).
    left_in_half: R,
    /// v.
    middle: R,
}

impl<R: Real> Fading<R> {
    /// By z: how many times what it lives on is turned over in the part.
    #[inline(always)]
    pub(super) fn new(turns: R) -> Self {
        let left_in_half = (R::of(-0.5) * turns).exp();
        let left = left_in_half * left_in_half;
        let gone_in_half = R::one() - left_in_half;
        let above = R::one() + left - R::of(2.0) * (R::one() - left) / turns;
        Fading {
            turns,
            left_in_half,
            middle: above / (gone_in_half * gone_in_half),
        }
    }

    /// What is left in half a part, were nothing to come after.
    #[inline(always)]
    pub(super) fn left_in_half(&self) -> R {
        self.left_in_half
    }

    /// What comes of a rate per length of the part, given it at the start, in the middle and at the end.
    #[inline(always)]
    pub(super) fn mean(&self, [first, middle, last]: [R; 3]) -> R {
        R::of(0.5) * (R::one() - self.middle) * (first + last) + self.middle * middle
    }

    /// The same up to a share of the part.
    pub(super) fn mean_until(&self, share: R, [first, middle, last]: [R; 3]) -> R {
        let one = R::one();
        let gone_in_half = one - self.left_in_half;
        let fades = (first + last - middle - middle) / (gone_in_half * gone_in_half);
        let stays = first - fades;
        let goes_straight = last - stays - fades * self.left_in_half * self.left_in_half;
        let faded = (one - (-self.turns * share).exp()) / self.turns;
        stays * share + R::of(0.5) * goes_straight * share * share + fades * faded
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::maths::exp;

    /// Seventeen digits, less what is lost between nearly equal numbers at z = 1.
    const ROUNDING: f64 = 1e-13;

    /// The looks at a rate.
    fn looks(rate: impl Fn(f64) -> f64) -> [f64; 3] {
        [rate(0.0), rate(0.5), rate(1.0)]
    }

    #[test]
    fn what_stays_goes_straight_or_fades_is_exact_up_to_any_share() {
        for turns in [1.0, 3.0, 30.0, 700.0] {
            let fading = Fading::new(turns);
            let rates = looks(|at| 5.0 - 3.0 * at + 7.0 * exp(-turns * at));
            let exact = |share: f64| {
                5.0 * share - 1.5 * share * share + 7.0 * (1.0 - exp(-turns * share)) / turns
            };
            assert!((fading.mean(rates) - exact(1.0)).abs() < ROUNDING * 12.0);
            for share in [0.0, 0.1, 0.5, 0.9, 1.0] {
                let found = fading.mean_until(share, rates);
                assert!(
                    (found - exact(share)).abs() < ROUNDING * 12.0,
                    "{turns}, {share}"
                );
            }
        }
    }

    #[test]
    fn weights_go_from_simpsons_to_those_of_a_straight_line() {
        let rates = [1.0, 20.0, 100.0];
        let simpson = (1.0 + 4.0 * 20.0 + 100.0) / 6.0;
        // v differs from Simpson's by z²/360
        assert!((Fading::new(0.02).mean(rates) - simpson).abs() < 1e-4);
        // and at the other end by 1/z
        assert!((Fading::new(1e9).mean(rates) - 20.0).abs() < 1e-6);
    }
}
