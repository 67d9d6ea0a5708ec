//! Nitrous acid as a share of nitrite.

use crate::base::maths;
use crate::base::units::KELVIN_AT_0_C;

/// Acidity constant of nitrous acid, HNO2 = H+ + NO2−.
///
/// ```text
/// K = exp(−2300/T)       HNO2 = NO2/(1 + K·10^pH)
/// ```
/// Source: Anthonisen et al. 1976 (from memory); both counted as nitrogen. Check value: pK 3.35
/// at 25 °C.
pub fn acidity(t_c: f64) -> f64 {
    maths::exp(-2300.0 / (t_c + KELVIN_AT_0_C))
}
