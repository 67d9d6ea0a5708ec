//! Oxygen and carbon dioxide in equilibrium with air.

use crate::base::maths;
use crate::base::units::{CO2_G_PER_MOL, KELVIN_AT_0_C};

use super::air::vapour_pressure_atm;
use super::constants::co2_solubility_mol_per_kg_atm;

/// Oxygen at saturation with water-saturated air, mg/L.
///
/// ```text
/// ln C* = −139.34411 + 1.575701e5/T − 6.642308e7/T² + 1.243800e10/T³ − 8.621949e11/T⁴
/// C = C*·P·(1 − p_w/P)(1 − θP)/[(1 − p_w)(1 − θ)]     θ = 0.000975 − 1.426e-5 t + 6.436e-8 t²
/// ```
/// Source: Benson & Krause 1984, as printed in Standard Methods 4500-O. 0 to 40 °C, 0.5 to 1.1 atm.
/// Check values: 9.092, 8.263, 7.828 at 20, 25, 28 °C; 8.162 at 20 °C and 0.9 atm.
pub fn oxygen_saturation_mg_per_l(t_c: f64, pressure_atm: f64) -> f64 {
    let t = t_c + KELVIN_AT_0_C;
    let at_one_atm = maths::exp(
        -139.34411 + (1.575701e5 + (-6.642308e7 + (1.243800e10 - 8.621949e11 / t) / t) / t) / t,
    );
    let vapour = vapour_pressure_atm(t_c);
    let theta = 0.000975 - 1.426e-5 * t_c + 6.436e-8 * t_c * t_c;
    at_one_atm * pressure_atm * (1.0 - vapour / pressure_atm) * (1.0 - theta * pressure_atm)
        / ((1.0 - vapour) * (1.0 - theta))
}

/// Carbon dioxide in equilibrium with room air, mg/L; `ppm` is the share of dry air.
///
/// ```text
/// C = K_H·x·(P − p_w)·44009.5
/// ```
/// Source: Plummer & Busenberg 1982. Check values at 25 °C: 0.610 at 420 ppm, 0.871 at 600 ppm.
pub fn co2_saturation_mg_per_l(t_c: f64, pressure_atm: f64, ppm: f64) -> f64 {
    co2_solubility_mol_per_kg_atm(t_c)
        * ppm
        * 1e-6
        * (pressure_atm - vapour_pressure_atm(t_c))
        * CO2_G_PER_MOL
        * 1000.0
}
