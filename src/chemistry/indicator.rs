//! The CO2 indicator (drop checker): a liquid of known alkalinity under a bubble of air.

use crate::base::units::MEQ_PER_DKH;

use super::still_water::StillWater;

/// Alkalinity of the reference liquid, dKH (common practice, no source).
const REFERENCE_DKH: f64 = 4.0;
/// Ionic strength of that liquid, a solution of sodium bicarbonate, mol/L.
const REFERENCE_IONIC_STRENGTH: f64 = 0.0014;
/// Below this the colour says nothing else, mg/L.
const LEAST_CO2_MG_PER_L: f64 = 0.1;

/// pH of the reference liquid that holds a concentration of CO2.
///
/// Check values at 25 °C: 6.97 at 15 mg/L, 6.85 at 20, 6.67 at 30, 6.55 at 40.
pub fn reference_ph(co2_mg_per_l: f64, t_c: f64) -> f64 {
    let liquid = StillWater {
        t_c,
        ionic_strength_mol_per_l: REFERENCE_IONIC_STRENGTH,
        alkalinity_meq_per_l: REFERENCE_DKH * MEQ_PER_DKH,
    };
    liquid.ph_at_co2(co2_mg_per_l.max(LEAST_CO2_MG_PER_L))
}
