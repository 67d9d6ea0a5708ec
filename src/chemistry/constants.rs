//! Equilibrium constants of the carbonate system in fresh water.
//!
//! Source of K_H, K_1, K_2: Plummer & Busenberg 1982; of K_w: the expression of general
//! geochemical databases. Zero ionic strength, 0 to 60 °C. T in kelvin, log is decimal.

use crate::base::maths::{exp10, log10};
use crate::base::units::KELVIN_AT_0_C;

/// Solubility of CO2, mol/(kg·atm).
///
/// ```text
/// log K_H = 108.3865 + 0.01985076 T − 6919.53/T − 40.45154 log T + 669365/T²
/// ```
/// Check values: 0.034046 at 25 °C, 0.039186 at 20 °C.
pub fn co2_solubility_mol_per_kg_atm(t_c: f64) -> f64 {
    let t = t_c + KELVIN_AT_0_C;
    exp10(108.3865 + 0.01985076 * t - 6919.53 / t - 40.45154 * log10(t) + 669365.0 / (t * t))
}

/// First acidity of carbonic acid, CO2 + H2O = H+ + HCO3−, as pK.
///
/// ```text
/// log K_1 = −356.3094 − 0.06091964 T + 21834.37/T + 126.8339 log T − 1684915/T²
/// ```
/// Check values: 6.3519 at 25 °C, 6.3819 at 20 °C.
pub fn pk1(t_c: f64) -> f64 {
    let t = t_c + KELVIN_AT_0_C;
    -(-356.3094 - 0.06091964 * t + 21834.37 / t + 126.8339 * log10(t) - 1684915.0 / (t * t))
}

/// Second acidity of carbonic acid, HCO3− = H+ + CO3²−, as pK.
///
/// ```text
/// log K_2 = −107.8871 − 0.03252849 T + 5151.79/T + 38.92561 log T − 563713.9/T²
/// ```
/// Check values: 10.3289 at 25 °C, 10.3756 at 20 °C.
pub fn pk2(t_c: f64) -> f64 {
    let t = t_c + KELVIN_AT_0_C;
    -(-107.8871 - 0.03252849 * t + 5151.79 / t + 38.92561 * log10(t) - 563713.9 / (t * t))
}

/// Ion product of water, as pK.
///
/// ```text
/// log K_w = 293.29227 + 0.1360833 T − 10576.913/T − 123.73158 log T − 6.996455e-5 T²
/// ```
/// Check values: 13.9948 at 25 °C, 14.1646 at 20 °C.
pub fn pkw(t_c: f64) -> f64 {
    let t = t_c + KELVIN_AT_0_C;
    -(293.29227 + 0.1360833 * t - 10576.913 / t - 123.73158 * log10(t) - 6.996455e-5 * t * t)
}
