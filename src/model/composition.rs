//! What a water holds per litre, and how waters are blended and dechlorinated.

use crate::base::real::Real;
use crate::base::units::N_PER_CL2;
use crate::chemistry::activity;
use crate::model::equivalents::MEQ_PER_MG_N;
use crate::model::pool::Pool;

/// Dissolved matter per litre of a water, and its temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Composition<R = f64> {
    /// Total ammonia, mg N/L.
    pub tan_mg_n_per_l: R,
    /// Nitrite, mg N/L.
    pub nitrite_mg_n_per_l: R,
    /// Nitrate, mg N/L.
    pub nitrate_mg_n_per_l: R,
    /// Phosphate, mg P/L.
    pub phosphate_mg_p_per_l: R,
    /// Potassium, mg/L.
    pub potassium_mg_per_l: R,
    /// Chelated iron, mg/L.
    pub iron_mg_per_l: R,
    /// Oxygen, mg/L.
    pub oxygen_mg_per_l: R,
    /// Total inorganic carbon, mmol/L.
    pub inorganic_carbon_mmol_per_l: R,
    /// Alkalinity, meq/L.
    pub alkalinity_meq_per_l: R,
    /// Calcium and magnesium, meq/L.
    pub hardness_meq_per_l: R,
    /// Chloride, mg/L.
    pub chloride_mg_per_l: R,
    /// Free chlorine, mg Cl2/L.
    pub chlorine_mg_cl2_per_l: R,
    /// Monochloramine, mg Cl2/L.
    pub chloramine_mg_cl2_per_l: R,
    /// Temperature, °C.
    pub temperature_c: R,
}

impl<R: Real> Composition<R> {
    /// Waters side by side.
    pub fn abreast(of: &[&Composition]) -> Self {
        let all = |number: fn(&Composition) -> f64| R::gather(|lane| number(of[lane]));
        Composition {
            tan_mg_n_per_l: all(|water| water.tan_mg_n_per_l),
            nitrite_mg_n_per_l: all(|water| water.nitrite_mg_n_per_l),
            nitrate_mg_n_per_l: all(|water| water.nitrate_mg_n_per_l),
            phosphate_mg_p_per_l: all(|water| water.phosphate_mg_p_per_l),
            potassium_mg_per_l: all(|water| water.potassium_mg_per_l),
            iron_mg_per_l: all(|water| water.iron_mg_per_l),
            oxygen_mg_per_l: all(|water| water.oxygen_mg_per_l),
            inorganic_carbon_mmol_per_l: all(|water| water.inorganic_carbon_mmol_per_l),
            alkalinity_meq_per_l: all(|water| water.alkalinity_meq_per_l),
            hardness_meq_per_l: all(|water| water.hardness_meq_per_l),
            chloride_mg_per_l: all(|water| water.chloride_mg_per_l),
            chlorine_mg_cl2_per_l: all(|water| water.chlorine_mg_cl2_per_l),
            chloramine_mg_cl2_per_l: all(|water| water.chloramine_mg_cl2_per_l),
            temperature_c: all(|water| water.temperature_c),
        }
    }

    /// The dissolved pools with their content per litre, in the units of the pools.
    pub fn dissolved(&self) -> [(Pool, R); 13] {
        [
            (Pool::Tan, self.tan_mg_n_per_l),
            (Pool::Nitrite, self.nitrite_mg_n_per_l),
            (Pool::Nitrate, self.nitrate_mg_n_per_l),
            (Pool::Phosphate, self.phosphate_mg_p_per_l),
            (Pool::Potassium, self.potassium_mg_per_l),
            (Pool::Iron, self.iron_mg_per_l),
            (Pool::Oxygen, self.oxygen_mg_per_l),
            (Pool::Dic, self.inorganic_carbon_mmol_per_l),
            (Pool::Alkalinity, self.alkalinity_meq_per_l),
            (Pool::Chlorine, self.chlorine_mg_cl2_per_l),
            (Pool::Chloramine, self.chloramine_mg_cl2_per_l),
            (Pool::Chloride, self.chloride_mg_per_l),
            (Pool::Hardness, self.hardness_meq_per_l),
        ]
    }
}

impl Composition {
    /// Water with nothing dissolved.
    pub const PURE: Composition = Composition {
        tan_mg_n_per_l: 0.0,
        nitrite_mg_n_per_l: 0.0,
        nitrate_mg_n_per_l: 0.0,
        phosphate_mg_p_per_l: 0.0,
        potassium_mg_per_l: 0.0,
        iron_mg_per_l: 0.0,
        oxygen_mg_per_l: 0.0,
        inorganic_carbon_mmol_per_l: 0.0,
        alkalinity_meq_per_l: 0.0,
        hardness_meq_per_l: 0.0,
        chloride_mg_per_l: 0.0,
        chlorine_mg_cl2_per_l: 0.0,
        chloramine_mg_cl2_per_l: 0.0,
        temperature_c: 0.0,
    };

    /// The water with another content of one pool per litre, in the unit of the pool; none when the
    /// pool is not dissolved.
    pub fn with(mut self, pool: Pool, per_l: f64) -> Option<Composition> {
        let content = match pool {
            Pool::Tan => &mut self.tan_mg_n_per_l,
            Pool::Nitrite => &mut self.nitrite_mg_n_per_l,
            Pool::Nitrate => &mut self.nitrate_mg_n_per_l,
            Pool::Phosphate => &mut self.phosphate_mg_p_per_l,
            Pool::Potassium => &mut self.potassium_mg_per_l,
            Pool::Iron => &mut self.iron_mg_per_l,
            Pool::Oxygen => &mut self.oxygen_mg_per_l,
            Pool::Dic => &mut self.inorganic_carbon_mmol_per_l,
            Pool::Alkalinity => &mut self.alkalinity_meq_per_l,
            Pool::Hardness => &mut self.hardness_meq_per_l,
            Pool::Chloride => &mut self.chloride_mg_per_l,
            Pool::Chlorine => &mut self.chlorine_mg_cl2_per_l,
            Pool::Chloramine => &mut self.chloramine_mg_cl2_per_l,
            _ => return None,
        };
        *content = per_l;
        Some(self)
    }

    /// Ionic strength, mol/L.
    pub fn ionic_strength_mol_per_l(&self) -> f64 {
        activity::ionic_strength_mol_per_l(self.hardness_meq_per_l, self.alkalinity_meq_per_l)
    }

    /// The sum over all fields of `share · value`: mixing by volume. Shares should add up to 1.
    pub fn blend(parts: &[(f64, Composition)]) -> Composition {
        let sum = |field: fn(&Composition) -> f64| {
            parts
                .iter()
                .map(|(share, water)| share * field(water))
                .sum()
        };
        Composition {
            tan_mg_n_per_l: sum(|w| w.tan_mg_n_per_l),
            nitrite_mg_n_per_l: sum(|w| w.nitrite_mg_n_per_l),
            nitrate_mg_n_per_l: sum(|w| w.nitrate_mg_n_per_l),
            phosphate_mg_p_per_l: sum(|w| w.phosphate_mg_p_per_l),
            potassium_mg_per_l: sum(|w| w.potassium_mg_per_l),
            iron_mg_per_l: sum(|w| w.iron_mg_per_l),
            oxygen_mg_per_l: sum(|w| w.oxygen_mg_per_l),
            inorganic_carbon_mmol_per_l: sum(|w| w.inorganic_carbon_mmol_per_l),
            alkalinity_meq_per_l: sum(|w| w.alkalinity_meq_per_l),
            hardness_meq_per_l: sum(|w| w.hardness_meq_per_l),
            chloride_mg_per_l: sum(|w| w.chloride_mg_per_l),
            chlorine_mg_cl2_per_l: sum(|w| w.chlorine_mg_cl2_per_l),
            chloramine_mg_cl2_per_l: sum(|w| w.chloramine_mg_cl2_per_l),
            temperature_c: sum(|w| w.temperature_c),
        }
    }

    /// The water after a dechlorinator: no residual, the ammonia of chloramine set free.
    ///
    /// ```text
    /// TAN += (14.007/70.906) · chloramine      alkalinity += TAN set free / 14.007
    /// ```
    pub fn dechlorinated(mut self) -> Composition {
        let freed = N_PER_CL2 * self.chloramine_mg_cl2_per_l;
        self.tan_mg_n_per_l += freed;
        self.alkalinity_meq_per_l += MEQ_PER_MG_N * freed;
        self.chlorine_mg_cl2_per_l = 0.0;
        self.chloramine_mg_cl2_per_l = 0.0;
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::pool::DISSOLVED;

    #[test]
    fn dechlorinating_two_mg_of_chloramine_frees_0_4_mg_of_nitrogen() {
        // common practice, no source: 0.198 mg N per mg Cl2 (14.007/70.906 by atomic masses)
        let water = Composition {
            chloramine_mg_cl2_per_l: 2.0,
            ..Composition::PURE
        }
        .dechlorinated();
        assert!(
            (water.tan_mg_n_per_l - 0.395).abs() < 5e-4,
            "{}",
            water.tan_mg_n_per_l
        );
        assert_eq!(water.chloramine_mg_cl2_per_l, 0.0);
    }

    #[test]
    fn half_and_half_is_the_mean() {
        let hard = Composition {
            alkalinity_meq_per_l: 2.0,
            temperature_c: 10.0,
            ..Composition::PURE
        };
        let soft = Composition {
            temperature_c: 20.0,
            ..Composition::PURE
        };
        let mixed = Composition::blend(&[(0.5, hard), (0.5, soft)]);
        assert_eq!(
            (mixed.alkalinity_meq_per_l, mixed.temperature_c),
            (1.0, 15.0)
        );
    }

    #[test]
    fn what_is_set_by_pool_is_listed_under_the_same_pool() {
        for pool in DISSOLVED {
            let listed = Composition::PURE.with(pool, 3.0).unwrap().dissolved();
            for (other, per_l) in listed {
                assert_eq!(per_l, if other == pool { 3.0 } else { 0.0 }, "{pool:?}");
            }
        }
        assert!(Composition::PURE.with(Pool::Algae, 3.0).is_none());
    }
}
