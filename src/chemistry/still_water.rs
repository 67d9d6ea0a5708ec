//! A water at rest: what pH, temperature, carbon and carbon dioxide say of each other.

use crate::base::maths;
use crate::base::units::CO2_G_PER_MOL;

use super::carbonate::{Carbonate, HYDROGEN, LAST_STEP, TRIALS};

/// A water at rest: what pH, temperature and carbon say of each other.
#[derive(Debug, Clone, Copy)]
pub struct StillWater {
    /// Temperature, °C.
    pub t_c: f64,
    /// Ionic strength, mol/L.
    pub ionic_strength_mol_per_l: f64,
    /// Alkalinity, meq/L.
    pub alkalinity_meq_per_l: f64,
}

impl StillWater {
    fn constants(&self) -> Carbonate<f64> {
        Carbonate::at(self.t_c, self.ionic_strength_mol_per_l)
    }
    /// pH and CO2 (mg/L) at a content of inorganic carbon, mmol/L.
    pub fn ph_and_co2(&self, carbon_mmol_per_l: f64) -> (f64, f64) {
        let constants = self.constants();
        let h = constants.hydrogen(
            carbon_mmol_per_l / 1000.0,
            self.alkalinity_meq_per_l / 1000.0,
            1e-7,
        );
        (
            -maths::log10(h),
            carbon_mmol_per_l * constants.shares(h).0 * CO2_G_PER_MOL,
        )
    }
    /// Inorganic carbon, mmol/L, of the water at a pH.
    pub fn carbon_at_ph(&self, ph: f64) -> f64 {
        let constants = self.constants();
        let h = maths::exp10(-ph);
        let (co2, bicarbonate) = constants.shares(h);
        let charge = bicarbonate + 2.0 * (1.0 - co2 - bicarbonate);
        let of_carbon =
            self.alkalinity_meq_per_l / 1000.0 - constants.kw / h + h * constants.inverse_gamma;
        1000.0 * (of_carbon / charge).max(0.0)
    }
    /// Inorganic carbon, mmol/L, of the water at a content of CO2, mg/L.
    pub fn carbon_at_co2(&self, co2_mg_per_l: f64) -> f64 {
        let h = self.hydrogen_at_co2(co2_mg_per_l);
        co2_mg_per_l / CO2_G_PER_MOL / self.constants().shares(h).0
    }
    /// pH of the water at a content of CO2, mg/L.
    pub fn ph_at_co2(&self, co2_mg_per_l: f64) -> f64 {
        -maths::log10(self.hydrogen_at_co2(co2_mg_per_l))
    }
    /// Activity of H+ at a content of CO2.
    ///
    /// With CO2 held, the charges make a cubic with one root above zero:
    /// ```text
    /// p(h) = h³/γ + Alk·h² − (K1·CO2 + Kw)·h − 2·K1·K2·CO2 = 0
    /// ```
    /// Without its last term it is a square, whose root lies below the cubic's, where the cubic rises and
    /// only bends upward from there on. Newton's first step from there is therefore too long and all
    /// others come down to the root from above.
    fn hydrogen_at_co2(&self, co2_mg_per_l: f64) -> f64 {
        let constants = self.constants();
        let co2 = co2_mg_per_l / CO2_G_PER_MOL / 1000.0;
        let (cube, square) = (constants.inverse_gamma, self.alkalinity_meq_per_l / 1000.0);
        let (line, rest) = (constants.k1 * co2 + constants.kw, 2.0 * constants.k12 * co2);
        let mut h = root_of_square(cube, square, line);
        for _ in 0..TRIALS {
            let value = ((cube * h + square) * h - line) * h - rest;
            let slope = (3.0 * cube * h + 2.0 * square) * h - line;
            let step = value / slope;
            h -= step;
            if step.abs() < LAST_STEP * h {
                break;
            }
        }
        h.clamp(HYDROGEN.0, HYDROGEN.1)
    }
}

/// The root above zero of `a·x² + b·x − c = 0`, with `a` and `c` above zero, without loss of digits.
fn root_of_square(a: f64, b: f64, c: f64) -> f64 {
    let root = (b * b + 4.0 * a * c).sqrt();
    if b < 0.0 {
        (root - b) / (2.0 * a)
    } else {
        2.0 * c / (root + b)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn water(t_c: f64, alkalinity_meq_per_l: f64, ionic_strength_mol_per_l: f64) -> StillWater {
        StillWater {
            t_c,
            ionic_strength_mol_per_l,
            alkalinity_meq_per_l,
        }
    }

    #[test]
    fn ph_co2_and_carbon_agree_with_each_other_over_the_whole_range() {
        // tolerance 1e-10: pH is exact to 1e-12 and carbon changes at most 2.3·C_T per pH
        for t in [5.0, 15.0, 25.0, 35.0] {
            for alk in [-0.1, 0.0, 0.01, 0.4, 1.4, 5.3] {
                for carbon in [0.02, 0.3, 1.5, 6.0] {
                    let water = water(t, alk, 0.003);
                    let (ph, co2) = water.ph_and_co2(carbon);
                    assert!((2.0..=12.0).contains(&ph));
                    if (2.1..11.9).contains(&ph) && carbon > alk {
                        assert!(
                            (water.carbon_at_co2(co2) / carbon - 1.0).abs() < 1e-9,
                            "{t} {alk} {carbon} {ph}"
                        );
                    }
                }
            }
        }
    }
}
