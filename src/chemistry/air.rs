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

/// Air pressure at a height above the sea, atm (standard atmosphere). 1000 m: 0.88699.
///
/// ```text
/// P = (1 − 2.25577e-5·z)^5.25588
/// ```
pub fn pressure_atm(altitude_m: f64) -> f64 {
    maths::pow(1.0 - 2.25577e-5 * altitude_m, 5.25588)
}
