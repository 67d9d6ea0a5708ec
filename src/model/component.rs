//! The pools, the outside world, and what one unit of each contains.

use crate::base::units::{
    CARBON_G_PER_MOL, NITROGEN_G_PER_MOL, OXYGEN_G_PER_MOL, PHOSPHORUS_G_PER_MOL,
    POTASSIUM_G_PER_MOL,
};

use super::stand::MAX_STANDS;

/// Milliequivalents per milligram of nitrogen.
pub const MEQ_PER_MG_N: f64 = 1.0 / NITROGEN_G_PER_MOL;
/// Milliequivalents per milligram of phosphorus (one charge per phosphate, as in alkalinity).
pub const MEQ_PER_MG_P: f64 = 1.0 / PHOSPHORUS_G_PER_MOL;
/// Milliequivalents per milligram of potassium.
pub const MEQ_PER_MG_K: f64 = 1.0 / POTASSIUM_G_PER_MOL;
/// Oxygen to nitrite, mg O2 per mg N.
pub const O2_PER_N_TO_NITRITE: f64 = 1.5 * OXYGEN_G_PER_MOL / NITROGEN_G_PER_MOL;
/// Oxygen from nitrite to nitrate, mg O2 per mg N.
pub const O2_PER_N_NITRITE_TO_NITRATE: f64 = O2_PER_N_TO_NITRITE / 3.0;
/// Oxygen to nitrate, mg O2 per mg N.
pub const O2_PER_N_TO_NITRATE: f64 = O2_PER_N_TO_NITRITE + O2_PER_N_NITRITE_TO_NITRATE;
/// Oxygen demand of organic carbon (CH2O), mg O2 per mg C.
pub const O2_PER_C: f64 = OXYGEN_G_PER_MOL / CARBON_G_PER_MOL;
/// Carbon of nitrifier cells (C5H7NO2: 5 mol C per 5 mol O2), mmol C per mg COD.
pub const MMOL_C_PER_MG_COD: f64 = 1.0 / OXYGEN_G_PER_MOL;

/// A pool of the tank: an amount that is part of the state.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pool {
    /// Total ammonia in the water, mg N.
    Tan,
    /// Nitrite, mg N.
    Nitrite,
    /// Nitrate, mg N.
    Nitrate,
    /// Phosphate, mg P.
    Phosphate,
    /// Potassium, mg.
    Potassium,
    /// Chelated iron, mg.
    Iron,
    /// Oxygen, mg.
    Oxygen,
    /// Total inorganic carbon, mmol.
    Dic,
    /// Alkalinity, meq; may be negative.
    Alkalinity,
    /// Free chlorine, mg Cl2.
    Chlorine,
    /// Monochloramine, mg Cl2.
    Chloramine,
    /// Chloride, mg.
    Chloride,
    /// Calcium and magnesium, meq.
    Hardness,
    /// Water above the soil, L.
    Volume,
    /// Water temperature, °C.
    Temperature,
    /// Carbon dioxide seen by the indicator, mg/L.
    Indicator,
    /// Exchangeable and pore-water ammonium of the soil, mg N.
    SoilAmmonium,
    /// Slow organic nitrogen of the soil, mg N.
    SoilOrganicN,
    /// Exchangeable and pore-water phosphorus of the soil, mg P.
    SoilPhosphorus,
    /// Acid-exchange capacity left in the soil, meq.
    SoilAcid,
    /// Ammonia oxidisers, mg COD.
    AmmoniaOxidisers,
    /// Nitrite oxidisers, mg COD.
    NitriteOxidisers,
    /// Complete ammonia oxidisers, mg COD.
    CompleteOxidisers,
    /// Attached algae, g dry weight.
    Algae,
    /// Leachable detritus, g dry weight.
    FastDetritus,
    /// Slow detritus, g dry weight.
    SlowDetritus,
    /// Nitrogen of the leachable detritus, mg N.
    FastDetritusN,
    /// Nitrogen of the slow detritus, mg N.
    SlowDetritusN,
    /// Submersed tissue of a stand, g dry weight.
    Biomass(usize),
    /// Nitrogen of that tissue, mg N.
    TissueN(usize),
    /// Out-of-water tissue of a stand still to be shed, g dry weight.
    Emersed(usize),
}

/// Pools that every tank has.
pub const FIXED: [Pool; 28] = [
    Pool::Tan,
    Pool::Nitrite,
    Pool::Nitrate,
    Pool::Phosphate,
    Pool::Potassium,
    Pool::Iron,
    Pool::Oxygen,
    Pool::Dic,
    Pool::Alkalinity,
    Pool::Chlorine,
    Pool::Chloramine,
    Pool::Chloride,
    Pool::Hardness,
    Pool::Volume,
    Pool::Temperature,
    Pool::Indicator,
    Pool::SoilAmmonium,
    Pool::SoilOrganicN,
    Pool::SoilPhosphorus,
    Pool::SoilAcid,
    Pool::AmmoniaOxidisers,
    Pool::NitriteOxidisers,
    Pool::CompleteOxidisers,
    Pool::Algae,
    Pool::FastDetritus,
    Pool::SlowDetritus,
    Pool::FastDetritusN,
    Pool::SlowDetritusN,
];

/// Places in the state: the fixed pools and three per stand.
pub const POOLS: usize = FIXED.len() + 3 * MAX_STANDS;

/// The dissolved pools, which a water change dilutes.
pub const DISSOLVED: [Pool; 13] = [
    Pool::Tan,
    Pool::Nitrite,
    Pool::Nitrate,
    Pool::Phosphate,
    Pool::Potassium,
    Pool::Iron,
    Pool::Oxygen,
    Pool::Dic,
    Pool::Alkalinity,
    Pool::Chlorine,
    Pool::Chloramine,
    Pool::Chloride,
    Pool::Hardness,
];

impl Pool {
    /// Place in the state.
    #[inline]
    pub const fn index(self) -> usize {
        match self {
            Pool::Biomass(stand) => FIXED.len() + 3 * stand,
            Pool::TissueN(stand) => FIXED.len() + 3 * stand + 1,
            Pool::Emersed(stand) => FIXED.len() + 3 * stand + 2,
            Pool::Tan => 0,
            Pool::Nitrite => 1,
            Pool::Nitrate => 2,
            Pool::Phosphate => 3,
            Pool::Potassium => 4,
            Pool::Iron => 5,
            Pool::Oxygen => 6,
            Pool::Dic => 7,
            Pool::Alkalinity => 8,
            Pool::Chlorine => 9,
            Pool::Chloramine => 10,
            Pool::Chloride => 11,
            Pool::Hardness => 12,
            Pool::Volume => 13,
            Pool::Temperature => 14,
            Pool::Indicator => 15,
            Pool::SoilAmmonium => 16,
            Pool::SoilOrganicN => 17,
            Pool::SoilPhosphorus => 18,
            Pool::SoilAcid => 19,
            Pool::AmmoniaOxidisers => 20,
            Pool::NitriteOxidisers => 21,
            Pool::CompleteOxidisers => 22,
            Pool::Algae => 23,
            Pool::FastDetritus => 24,
            Pool::SlowDetritus => 25,
            Pool::FastDetritusN => 26,
            Pool::SlowDetritusN => 27,
        }
    }
    /// The pool at a place in the state.
    pub fn at(index: usize) -> Pool {
        match index.checked_sub(FIXED.len()) {
            None => FIXED[index],
            Some(rest) => match rest % 3 {
                0 => Pool::Biomass(rest / 3),
                1 => Pool::TissueN(rest / 3),
                _ => Pool::Emersed(rest / 3),
            },
        }
    }
    /// Whether the amount may lie below zero.
    pub fn may_be_negative(self) -> bool {
        matches!(self, Pool::Alkalinity | Pool::Temperature | Pool::Indicator)
    }
}

/// What is conserved, in the unit of its ledger.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Quantity {
    /// mg N.
    Nitrogen,
    /// mmol C.
    Carbon,
    /// mg P.
    Phosphorus,
    /// mg K.
    Potassium,
    /// mg Fe.
    Iron,
    /// mg O2 of demand (oxygen itself counts −1; nitrogen counted from NH3).
    OxygenDemand,
    /// meq, as alkalinity (charge of everything that is not water's own acid and base).
    Charge,
    /// L.
    Water,
}

/// All conserved quantities.
pub const QUANTITIES: [Quantity; 8] = [
    Quantity::Nitrogen,
    Quantity::Carbon,
    Quantity::Phosphorus,
    Quantity::Potassium,
    Quantity::Iron,
    Quantity::OxygenDemand,
    Quantity::Charge,
    Quantity::Water,
];

impl Quantity {
    /// Name in tables and files.
    pub fn name(self) -> &'static str {
        match self {
            Quantity::Nitrogen => "nitrogen",
            Quantity::Carbon => "carbon",
            Quantity::Phosphorus => "phosphorus",
            Quantity::Potassium => "potassium",
            Quantity::Iron => "iron",
            Quantity::OxygenDemand => "oxygen demand",
            Quantity::Charge => "charge",
            Quantity::Water => "water",
        }
    }
    /// Unit of its ledger.
    pub fn unit(self) -> &'static str {
        match self {
            Quantity::Nitrogen => "mg N",
            Quantity::Carbon => "mmol C",
            Quantity::Phosphorus => "mg P",
            Quantity::Potassium => "mg K",
            Quantity::Iron => "mg Fe",
            Quantity::OxygenDemand => "mg O2",
            Quantity::Charge => "meq",
            Quantity::Water => "L",
        }
    }
}

/// The named ways across the boundary of the tank. Positive in the ledger means into the tank.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Flux {
    /// Nitrogen gas from denitrification.
    NitrogenGas,
    /// Carbon of the soil burnt by its microbes (soil carbon is not a pool).
    SoilCarbon,
    /// Iron that roots find in the soil (not a pool).
    SoilIron,
    /// Oxygen and carbon dioxide through the surface and the air stone.
    GasExchange,
    /// Oxygen leaving as bubbles from plants.
    Bubbles,
    /// Carbon dioxide dissolved from the cylinder.
    InjectedGas,
    /// Evaporation.
    Evaporation,
    /// Top-up water.
    TopUp,
    /// Iron lost from its chelate.
    IronPrecipitation,
    /// Feed brought in, less what stays in the animals; what animals burn.
    AnimalsAndFeed,
    /// Taken out with changed water.
    RemovedByChanges,
    /// Brought in with refill water.
    SuppliedByRefills,
    /// Dosed.
    Dosed,
    /// Films brought in.
    Seeded,
    /// Planted.
    Planted,
    /// Taken out by trimming, siphoning, wiping and cleaning.
    RemovedByCare,
}

/// All ways across the boundary.
pub const FLUXES: [Flux; 16] = [
    Flux::NitrogenGas,
    Flux::SoilCarbon,
    Flux::SoilIron,
    Flux::GasExchange,
    Flux::Bubbles,
    Flux::InjectedGas,
    Flux::Evaporation,
    Flux::TopUp,
    Flux::IronPrecipitation,
    Flux::AnimalsAndFeed,
    Flux::RemovedByChanges,
    Flux::SuppliedByRefills,
    Flux::Dosed,
    Flux::Seeded,
    Flux::Planted,
    Flux::RemovedByCare,
];

impl Flux {
    /// Name in tables and files.
    pub fn name(self) -> &'static str {
        match self {
            Flux::NitrogenGas => "gone as nitrogen gas",
            Flux::SoilCarbon => "soil carbon burnt",
            Flux::SoilIron => "iron from the soil",
            Flux::GasExchange => "gas exchange",
            Flux::Bubbles => "bubbles",
            Flux::InjectedGas => "injected gas",
            Flux::Evaporation => "evaporation",
            Flux::TopUp => "top-up",
            Flux::IronPrecipitation => "iron precipitated",
            Flux::AnimalsAndFeed => "animals and feed",
            Flux::RemovedByChanges => "removed by water changes",
            Flux::SuppliedByRefills => "supplied by refills",
            Flux::Dosed => "dosed",
            Flux::Seeded => "seeded",
            Flux::Planted => "planted",
            Flux::RemovedByCare => "removed by trimming and cleaning",
        }
    }
    /// Place in tables.
    pub fn index(self) -> usize {
        FLUXES
            .iter()
            .position(|&f| f == self)
            .expect("every flux is listed")
    }
}

/// What a row can act on: a pool, or an amount of something conserved from or to the outside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Component {
    /// A pool of the tank.
    Pool(Pool),
    /// An amount of a conserved quantity that lies outside; +1 in a row means one unit left.
    Outside(Flux, Quantity),
}

impl From<Pool> for Component {
    fn from(pool: Pool) -> Self {
        Component::Pool(pool)
    }
}
