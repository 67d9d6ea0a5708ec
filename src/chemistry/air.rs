//! The air above the water.

use crate::base::maths;
use crate::base::real::Real;
use crate::base::units::KELVIN_AT_0_C;

/// Kilopascals in an atmosphere.
pub const KPA_PER_ATM: f64 = 101.325;

/// Vapour pressure of water, atm.
///
/// ```text
/// ln p_w = 11.8571 − 3840.70/T − 216961/T²
/// ```
/// Source: Benson & Krause 1984, as printed in Standard Methods 4500-O. 0 to 40 °C.
/// Check value: 0.031262 at 25 °C.
pub fn vapour_pressure_atm<R: Real>(t_c: R) -> R {
    let t = t_c + R::of(KELVIN_AT_0_C);
    (R::of(11.8571) - R::of(3840.70) / t - R::of(216_961.0) / (t * t)).exp()
}

/// How the vapour pressure goes on from a temperature: `[a, b]`, per K and per K².
///
/// ```text
/// p_w(T + d) ≈ p_w(T)·(1 + a·d + b·d²)      a = r, b = (r² + r′)/2, r = d ln p_w/dT
/// ```
/// From the formula of [`vapour_pressure_atm`]; a degree away the cube left out is 3e-5 of the value.
#[inline(always)]
pub fn vapour_pressure_ahead<R: Real>(t_c: R) -> [R; 2] {
    let inverse = R::one() / (t_c + R::of(KELVIN_AT_0_C));
    let square = inverse * inverse;
    let (first, second) = (R::of(3840.70), R::of(2.0 * 216_961.0) * inverse);
    let rise = (first + second) * square;
    let bend = -(R::of(2.0) * first + R::of(3.0) * second) * square * inverse;
    [rise, R::of(0.5) * (rise * rise + bend)]
}

/// Air pressure at a height above the sea, atm (standard atmosphere). 1000 m: 0.88699.
///
/// ```text
/// P = (1 − 2.25577e-5·z)^5.25588
/// ```
pub fn pressure_atm(altitude_m: f64) -> f64 {
    maths::pow(1.0 - 2.25577e-5 * altitude_m, 5.25588)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn vapour_pressure_a_degree_ahead_follows_its_formula() {
        for t in [5.0, 15.0, 25.0, 35.0] {
            let [a, b] = vapour_pressure_ahead(t);
            for d in [-1.0, 1.0_f64] {
                let share = vapour_pressure_atm(t + d) / vapour_pressure_atm(t);
                // what the cube of a degree adds
                assert!((1.0 + a * d + b * d * d - share).abs() < 6e-5, "{t} {d}");
                assert!((1.0 + a * d - share).abs() > 1e-3, "the square counts");
            }
        }
    }
}
