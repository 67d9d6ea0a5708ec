//! The pools: what the state of a tank is made of.

/// How many stands a tank can hold.
pub const MAX_STANDS: usize = 8;

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
    #[inline(always)]
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
