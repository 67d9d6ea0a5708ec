//! Waters with something uncertain in them: blended anew for each member, as the scenario blends them.

use crate::chemistry::still_water::StillWater;
use crate::engine::input::{ModelInput, TopUp};
use crate::model::composition::Composition;
use crate::model::pool::Pool;

/// Something in a water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Matter {
    /// A dissolved pool, per litre.
    Dissolved(Pool),
    /// Carbon dioxide, mg/L.
    CarbonDioxide,
    /// Temperature, °C.
    Temperature,
}

/// What decides how much inorganic carbon a water holds beside its alkalinity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Carbon {
    /// Carbon dioxide, mg/L.
    Co2(f64),
    /// pH.
    Ph(f64),
}

/// One water of a scenario.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// What it holds.
    pub holds: Composition,
    /// What its carbon follows from.
    pub carbon: Carbon,
}

/// How a water that goes into the tank is made.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Recipe {
    /// Shares of the waters, by number.
    pub parts: Vec<(f64, usize)>,
    /// Whether chlorine is bound.
    pub is_dechlorinated: bool,
    /// Temperature it is brought to, °C.
    pub temperature_c: Option<f64>,
}

/// All waters of a scenario and what becomes of them.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Waters {
    /// The waters.
    pub list: Vec<Water>,
    /// What the first filling is made of.
    pub fill: Recipe,
    /// What is changed for.
    pub refill: Recipe,
    /// The water that tops up, if one does.
    pub top_up: Option<usize>,
}

impl Water {
    /// Puts something into the water.
    pub fn hold(&mut self, matter: Matter, amount: f64) {
        match matter {
            Matter::Dissolved(pool) => {
                self.holds = self.holds.with(pool, amount).unwrap_or(self.holds);
            }
            Matter::CarbonDioxide => self.carbon = Carbon::Co2(amount),
            Matter::Temperature => self.holds.temperature_c = amount,
        }
    }
    /// The water with the inorganic carbon that follows from alkalinity and CO2, or alkalinity and pH.
    pub fn settled(&self) -> Composition {
        let still = StillWater {
            t_c: self.holds.temperature_c,
            ionic_strength_mol_per_l: self.holds.ionic_strength_mol_per_l(),
            alkalinity_meq_per_l: self.holds.alkalinity_meq_per_l,
        };
        let inorganic_carbon_mmol_per_l = match self.carbon {
            Carbon::Co2(mg_per_l) => still.carbon_at_co2(mg_per_l),
            Carbon::Ph(ph) => still.carbon_at_ph(ph),
        };
        Composition {
            inorganic_carbon_mmol_per_l,
            ..self.holds
        }
    }
}

impl Recipe {
    /// The water as it goes into the tank.
    pub fn made_of(&self, waters: &[Composition]) -> Composition {
        let parts: Vec<(f64, Composition)> = self
            .parts
            .iter()
            .map(|&(share, water)| (share, waters[water]))
            .collect();
        let mut water = Composition::blend(&parts);
        if self.is_dechlorinated {
            water = water.dechlorinated();
        }
        if let Some(t_c) = self.temperature_c {
            water.temperature_c = t_c;
        }
        water
    }
}

impl Waters {
    /// Whether a dechlorinator binds chlorine or chloramine in what is made by a recipe.
    pub fn needs_dechlorinator(&self, recipe: &Recipe) -> bool {
        let has_residual = |&(share, water): &(f64, usize)| {
            let holds = &self.list[water].holds;
            share > 0.0 && holds.chlorine_mg_cl2_per_l + holds.chloramine_mg_cl2_per_l > 0.0
        };
        recipe.is_dechlorinated && recipe.parts.iter().any(has_residual)
    }
    /// Makes all water of a run anew, with other contents of some.
    pub fn pour(&self, input: &mut ModelInput, drawn: &[(usize, Matter, f64)]) {
        let mut list = self.list.clone();
        for &(water, matter, amount) in drawn {
            list[water].hold(matter, amount);
        }
        let settled: Vec<Composition> = list.iter().map(Water::settled).collect();
        input.fill = self.fill.made_of(&settled);
        input.refill = self.refill.made_of(&settled);
        if let (TopUp::Automatic(now), Some(water)) = (&mut input.top_up, self.top_up) {
            let temperature_c = now.temperature_c;
            *now = Composition {
                temperature_c,
                ..settled[water]
            };
        }
    }
}
