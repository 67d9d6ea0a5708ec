//! pH and carbonate species from inorganic carbon and alkalinity.
//!
//! Alkalinity here is carbonate alkalinity: ammonia, phosphate and humic acids are not in it.

use crate::base::maths;
use crate::base::real::Real;

use super::{activity, constants};

/// Constants of the carbonate system at one temperature and ionic strength.
#[derive(Debug, Clone, Copy)]
pub struct Carbonate<R> {
    /// K_1/γ1, mol/L: first acidity against the concentration of bicarbonate.
    pub k1: R,
    /// K_1·K_2/γ2, (mol/L)².
    pub k12: R,
    /// K_w/γ1, (mol/L)².
    pub kw: R,
    /// 1/γ1.
    pub inverse_gamma: R,
}

impl<R: Real> Carbonate<R> {
    /// The constants at a temperature and ionic strength.
    pub fn at(t_c: f64, ionic_strength_mol_per_l: R) -> Self {
        let gamma = activity::monovalent(t_c, ionic_strength_mol_per_l);
        let (k1, k2) = (
            maths::exp10(-constants::pk1(t_c)),
            maths::exp10(-constants::pk2(t_c)),
        );
        Carbonate {
            k1: R::of(k1) / gamma,
            k12: R::of(k1 * k2) / (gamma * gamma * gamma * gamma),
            kw: R::of(maths::exp10(-constants::pkw(t_c))) / gamma,
            inverse_gamma: R::one() / gamma,
        }
    }
}

/// Least and greatest activity of H+ considered: pH 12 and pH 2.
pub(super) const HYDROGEN: (f64, f64) = (1e-12, 1e-2);
/// A Newton step (as a share of H+) below this is the last: the next would be about its square, 1e-12.
pub(super) const LAST_STEP: f64 = 1e-6;
/// One of Halley's steps (as a share of H+) below this is the last: what is left is about its cube.
const LAST_STEP_NEAR: f64 = 3e-5;
/// Trials near a guess; one or two do while a tank goes its way.
const TRIALS_NEAR: u32 = 4;
/// Most trials; bisection alone needs 55 from pH 2 to 12.
pub(super) const TRIALS: u32 = 120;

impl<R: Real> Carbonate<R> {
    /// Activity of H+, mol/L, from inorganic carbon and alkalinity (mol/L and eq/L).
    ///
    /// ```text
    /// C_T·(r1 + 2 r2)/(1 + r1 + r2) + (K_w/H − H)/γ1 = Alk      r1 = K_1/(H γ1)   r2 = K_1 K_2/(H² γ2)
    /// ```
    /// The left side falls steadily as H rises, so the root is unique, for any alkalinity, also
    /// below zero. It is looked for near the `guess` first, then everywhere; exact to 1e-12 in pH.
    #[inline(always)]
    pub fn hydrogen(&self, carbon_mol_per_l: R, alkalinity_eq_per_l: R, guess: R) -> R {
        let (near, found) = self.near(carbon_mol_per_l, alkalinity_eq_per_l, guess);
        if R::all(found) {
            return near;
        }
        let anywhere = self.anywhere(carbon_mol_per_l, alkalinity_eq_per_l, guess);
        R::pick(found, near, anywhere)
    }

    /// The root near a guess, and whether it is one: a few of Halley's steps on what the balance of
    /// charges becomes when its fractions are multiplied away, so that a step takes one division.
    ///
    /// ```text
    /// p(h) = (h²/γ + Alk·h − K_w)·(h² + K_1·h + K_1 K_2) − C_T·h·(K_1·h + 2 K_1 K_2) = 0
    /// ```
    #[inline(always)]
    fn near(&self, carbon: R, alkalinity: R, guess: R) -> (R, R::Mask) {
        let two = R::of(2.0);
        let mut h = guess;
        let mut found = h.below(R::zero()); // nowhere
        for _ in 0..TRIALS_NEAR {
            let (water, slope_w) = (
                (h * self.inverse_gamma + alkalinity) * h - self.kw,
                two * h * self.inverse_gamma + alkalinity,
            );
            let (acids, slope_a) = ((h + self.k1) * h + self.k12, two * h + self.k1);
            let line = carbon * self.k1;
            let value = water * acids - h * (line * h + two * carbon * self.k12);
            let slope = slope_w * acids + water * slope_a - two * (line * h + carbon * self.k12);
            let bend = two * (self.inverse_gamma * acids + slope_w * slope_a + water - line);
            let step = two * value * slope / (h * (two * slope * slope - value * bend));
            let last = step.abs().below(R::of(LAST_STEP_NEAR));
            h = R::pick(found, h, h - h * step);
            found = R::either(found, last);
            if R::all(found) {
                break;
            }
        }
        let inside = R::both(R::of(HYDROGEN.0).below(h), h.below(R::of(HYDROGEN.1)));
        (h, R::both(found, inside))
    }

    /// The root wherever it is: Newton's steps in ln H from `guess`, kept inside a bracket from pH 2 to
    /// 12 and replaced by halving it where they leave it.
    #[cold]
    #[inline(never)]
    fn anywhere(&self, carbon_mol_per_l: R, alkalinity_eq_per_l: R, guess: R) -> R {
        let mut low = R::of(HYDROGEN.0);
        let mut high = R::of(HYDROGEN.1);
        let mut h = guess.most(low).least(high);
        let mut done = h.below(R::zero()); // nowhere
        for _ in 0..TRIALS {
            let (excess, slope) = self.excess(carbon_mol_per_l, alkalinity_eq_per_l, h);
            let too_alkaline = R::zero().below(excess); // H must rise
            low = R::pick(too_alkaline, h, low);
            high = R::pick(too_alkaline, high, h);
            let step = excess / slope;
            let newton = h * grow(step);
            let outside = R::either(newton.below(low), high.below(newton));
            let next = if R::any(outside) {
                R::pick(outside, (low * high).sqrt(), newton)
            } else {
                newton
            };
            let last = step.abs().below(R::of(LAST_STEP));
            // a step this small is at the root even where rounding puts it on the bracket's edge
            let next = R::pick(last, newton, next);
            h = R::pick(done, h, next);
            done = R::either(done, last);
            if R::all(done) {
                break;
            }
        }
        h
    }

    /// Alkalinity at `h` beyond what is there, eq/L, and minus its slope against ln H.
    #[inline(always)]
    fn excess(&self, carbon: R, alkalinity: R, h: R) -> (R, R) {
        let inverse = R::one() / h;
        let r1 = self.k1 * inverse;
        let r2 = self.k12 * inverse * inverse;
        let share = R::one() / (R::one() + r1 + r2);
        let two = R::of(2.0);
        let charge = (r1 + two * r2) * share;
        let water = self.kw * inverse;
        let acid = h * self.inverse_gamma;
        let excess = carbon * charge + water - acid - alkalinity;
        let slope = carbon * ((r1 + R::of(4.0) * r2) * share - charge * charge) + water + acid;
        (excess, slope)
    }

    /// Shares of inorganic carbon that are CO2 and bicarbonate, at an activity of H+.
    #[inline(always)]
    pub fn shares(&self, h: R) -> (R, R) {
        let inverse = R::one() / h;
        let r1 = self.k1 * inverse;
        let r2 = self.k12 * inverse * inverse;
        let co2 = R::one() / (R::one() + r1 + r2);
        (co2, r1 * co2)
    }
}

/// e^step for Newton's step, at most a factor e² either way: the approximant of Padé, exact to 1e-13 for
/// steps below 0.01 and near enough for larger ones, which are not the last.
///
/// ```text
/// e^x ≈ (12 + 6x + x²)/(12 − 6x + x²)
/// ```
#[inline(always)]
fn grow<R: Real>(step: R) -> R {
    let step = step.most(R::of(-2.0)).least(R::of(2.0));
    let (even, odd) = (R::of(12.0) + step * step, R::of(6.0) * step);
    (even + odd) / (even - odd)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_guess_finds_the_same_root() {
        let constants = Carbonate::at(25.0, 0.004);
        for alk in [-0.2e-3, 0.0, 1e-6, 1e-3, 5.35e-3] {
            for carbon in [1e-6, 1e-4, 2e-3, 8e-3] {
                let first = constants.hydrogen(carbon, alk, 1e-7);
                for guess in [1e-12, 3e-9, 1e-5, 1e-2] {
                    let h = constants.hydrogen(carbon, alk, guess);
                    assert!(
                        (h / first - 1.0).abs() < 1e-11,
                        "alk {alk} carbon {carbon} guess {guess}: {h} {first}"
                    );
                }
            }
        }
    }
}
