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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pk_is_3_35_at_25_degrees() {
        // Anthonisen et al. 1976; tolerance: half a unit of the last printed digit
        assert!((-maths::log10(acidity(25.0)) - 3.35).abs() < 5e-3);
    }
}
