//! What one unit of each pool contains of each conserved quantity.

use crate::base::real::Real;

use super::component::Component;
use super::conserved::Quantity;
use super::equivalents::{
    MEQ_PER_MG_K, MEQ_PER_MG_N, MEQ_PER_MG_P, MMOL_C_PER_MG_COD, O2_PER_C, O2_PER_N_TO_NITRATE,
    O2_PER_N_TO_NITRITE,
};
use super::parameter::{ParameterSpec, parameter};
use super::parameter_set::Values;
use super::pool::Pool;
use crate::base::sources::{DUARTE_1992, GERLOFF_1966, HIATT_GRADY_2008, memory, published};
use crate::base::units::{CARBON_G_PER_MOL, N_PER_CL2};

/// Composition of dry tissue and of nitrifier cells.
pub const PARAMETERS: &[ParameterSpec] = &[
    parameter(
        "f_C",
        "carbon in dry tissue",
        "g/g",
        0.38,
        (0.33, 0.42),
        memory(&[DUARTE_1992], "35 to 40 %"),
    ),
    parameter(
        "q_P",
        "phosphorus in dry tissue",
        "mg/g",
        3.0,
        (2.0, 4.0),
        memory(&[DUARTE_1992, GERLOFF_1966], "0.2 to 0.4 %"),
    ),
    parameter(
        "q_K",
        "potassium in dry tissue",
        "mg/g",
        25.0,
        (15.0, 40.0),
        memory(&[], ""),
    ),
    parameter(
        "q_Fe",
        "iron in dry tissue",
        "mg/g",
        0.2,
        (0.1, 0.5),
        memory(&[], ""),
    ),
    parameter(
        "q_NG",
        "nitrogen in algae",
        "mg/g",
        60.0,
        (40.0, 80.0),
        memory(&[], ""),
    ),
    parameter(
        "Q0",
        "nitrogen in plant tissue at planting",
        "mg/g",
        30.0,
        (20.0, 40.0),
        memory(&[DUARTE_1992], ""),
    ),
    parameter(
        "i_N",
        "nitrogen in nitrifier cells",
        "g/g",
        0.086,
        (0.08, 0.09),
        published(&[HIATT_GRADY_2008], "C5H7NO2 gives 0.0875"),
    ),
];

/// Composition of everything, in the units of the ledger.
#[derive(Debug, Clone, Copy)]
pub struct Contents<R> {
    tissue_carbon_mmol_per_g: R,
    tissue_phosphorus_mg_per_g: R,
    tissue_potassium_mg_per_g: R,
    tissue_iron_mg_per_g: R,
    tissue_oxygen_demand_mg_per_g: R,
    algae_nitrogen_mg_per_g: R,
    emersed_nitrogen_mg_per_g: R,
    cell_nitrogen_mg_per_mg: R,
}

impl<R: Real> Contents<R> {
    /// The composition under a set of parameters.
    pub fn new(values: &Values<R>) -> Self {
        let mmol_c = R::of(1000.0) * values.get("f_C") / R::of(CARBON_G_PER_MOL);
        Contents {
            tissue_carbon_mmol_per_g: mmol_c,
            tissue_phosphorus_mg_per_g: values.get("q_P"),
            tissue_potassium_mg_per_g: values.get("q_K"),
            tissue_iron_mg_per_g: values.get("q_Fe"),
            tissue_oxygen_demand_mg_per_g: R::of(1000.0 * O2_PER_C) * values.get("f_C"),
            algae_nitrogen_mg_per_g: values.get("q_NG"),
            emersed_nitrogen_mg_per_g: values.get("Q0"),
            cell_nitrogen_mg_per_mg: values.get("i_N"),
        }
    }

    /// How much of a quantity one unit of a component holds; none where it holds nothing of it.
    ///
    /// Charge is counted as alkalinity: what a component would take from alkalinity if it were
    /// turned into something uncharged.
    pub fn of(&self, component: Component, quantity: Quantity) -> Option<R> {
        match component {
            Component::Outside(_, outside) => (outside == quantity).then(R::one),
            Component::Pool(pool) => match quantity {
                Quantity::Nitrogen => self.nitrogen(pool),
                Quantity::Carbon => self.carbon(pool),
                Quantity::OxygenDemand => self.oxygen_demand(pool),
                Quantity::Charge => charge(pool).map(R::of),
                Quantity::Water => (pool == Pool::Volume).then(R::one),
                Quantity::Phosphorus => self.tissue_share(
                    pool,
                    &[Pool::Phosphate, Pool::SoilPhosphorus],
                    self.tissue_phosphorus_mg_per_g,
                ),
                Quantity::Potassium => {
                    self.tissue_share(pool, &[Pool::Potassium], self.tissue_potassium_mg_per_g)
                }
                Quantity::Iron => self.tissue_share(pool, &[Pool::Iron], self.tissue_iron_mg_per_g),
            },
        }
    }

    fn nitrogen(&self, pool: Pool) -> Option<R> {
        match pool {
            Pool::Tan | Pool::Nitrite | Pool::Nitrate | Pool::SoilAmmonium | Pool::SoilOrganicN => {
                Some(R::one())
            }
            Pool::FastDetritusN | Pool::SlowDetritusN | Pool::TissueN(_) => Some(R::one()),
            Pool::AmmoniaOxidisers | Pool::NitriteOxidisers | Pool::CompleteOxidisers => {
                Some(self.cell_nitrogen_mg_per_mg)
            }
            Pool::Chloramine => Some(R::of(N_PER_CL2)),
            Pool::Algae => Some(self.algae_nitrogen_mg_per_g),
            Pool::Emersed(_) => Some(self.emersed_nitrogen_mg_per_g),
            _ => None,
        }
    }

    fn carbon(&self, pool: Pool) -> Option<R> {
        match pool {
            Pool::Dic => Some(R::one()),
            Pool::AmmoniaOxidisers | Pool::NitriteOxidisers | Pool::CompleteOxidisers => {
                Some(R::of(MMOL_C_PER_MG_COD))
            }
            pool if is_tissue(pool) => Some(self.tissue_carbon_mmol_per_g),
            _ => None,
        }
    }

    fn oxygen_demand(&self, pool: Pool) -> Option<R> {
        match pool {
            Pool::Oxygen => Some(-R::one()),
            Pool::Nitrite => Some(R::of(-O2_PER_N_TO_NITRITE)),
            Pool::Nitrate => Some(R::of(-O2_PER_N_TO_NITRATE)),
            Pool::AmmoniaOxidisers | Pool::NitriteOxidisers | Pool::CompleteOxidisers => {
                Some(R::one())
            }
            pool if is_tissue(pool) => Some(self.tissue_oxygen_demand_mg_per_g),
            _ => None,
        }
    }

    fn tissue_share(&self, pool: Pool, pure: &[Pool], per_g: R) -> Option<R> {
        if pure.contains(&pool) {
            Some(R::one())
        } else {
            is_tissue(pool).then_some(per_g)
        }
    }

    /// How much of a quantity a whole state holds.
    pub fn held(&self, amounts: &[R], quantity: Quantity) -> R {
        let mut sum = R::zero();
        for (index, amount) in amounts.iter().enumerate() {
            if let Some(content) = self.of(Component::Pool(Pool::at(index)), quantity) {
                sum += content * *amount;
            }
        }
        sum
    }
}

fn is_tissue(pool: Pool) -> bool {
    matches!(
        pool,
        Pool::Algae | Pool::FastDetritus | Pool::SlowDetritus | Pool::Biomass(_) | Pool::Emersed(_)
    )
}

fn charge(pool: Pool) -> Option<f64> {
    match pool {
        Pool::Alkalinity => Some(1.0),
        Pool::Tan | Pool::SoilAmmonium => Some(-MEQ_PER_MG_N),
        Pool::Nitrite | Pool::Nitrate => Some(MEQ_PER_MG_N),
        Pool::Phosphate => Some(MEQ_PER_MG_P),
        Pool::Potassium => Some(-MEQ_PER_MG_K),
        Pool::SoilAcid => Some(-1.0),
        _ => None,
    }
}
