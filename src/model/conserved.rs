//! What is conserved, and the named ways across the boundary of the tank.

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
