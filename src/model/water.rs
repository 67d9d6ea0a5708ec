//! What rate laws look at: concentrations, pH and the shared terms of one instant.

use crate::base::real::Real;
use crate::base::units::CO2_G_PER_MOL;

use super::canopy::Canopy;
use super::films::Films;
use super::held::Held;
use super::pool::{MAX_STANDS, Pool};
use super::state::State;
use super::temperature::{Factor, Factors};

/// The tank at one instant, as rate laws see it. Concentrations are per litre of free water.
#[derive(Debug, Clone, Copy)]
pub struct Water<R> {
    /// Amounts of all pools.
    pub state: State<R>,
    /// What is switched.
    pub held: Held<R>,
    /// Days since midnight of day 0.
    pub days: R,
    /// Whether the course of temperature is worked out ahead, so that nobody asks for the rate of heat.
    pub warms_by_course: bool,
    /// Factors at the present temperature.
    pub factors: Factors<R>,
    /// Total ammonia, mg N/L.
    pub tan: R,
    /// Nitrite, mg N/L.
    pub nitrite: R,
    /// Nitrate, mg N/L.
    pub nitrate: R,
    /// Phosphate, mg P/L.
    pub phosphate: R,
    /// Potassium, mg/L.
    pub potassium: R,
    /// Chelated iron, mg/L.
    pub iron: R,
    /// Oxygen, mg/L.
    pub oxygen: R,
    /// Inorganic carbon, mmol/L.
    pub carbon: R,
    /// Alkalinity, meq/L.
    pub alkalinity: R,
    /// Free chlorine and monochloramine together, mg Cl2/L.
    pub residual: R,
    /// Activity of H+, mol/L.
    pub hydrogen: R,
    /// Its inverse.
    pub inverse_hydrogen: R,
    /// CO2, mmol/L.
    pub co2: R,
    /// Bicarbonate, mmol/L.
    pub bicarbonate: R,
    /// Free ammonia, mg N/L.
    pub free_ammonia: R,
    /// Nitrous acid, mg N/L.
    pub nitrous_acid: R,
    /// Monod factor of oxygen for respiration and decay.
    pub oxic: R,
    /// Ammonium in the pore water of the soil, mg N/L.
    pub pore_tan: R,
    /// Phosphate in the pore water of the soil, mg P/L.
    pub pore_phosphate: R,
    /// How fast the nitrifier guilds could grow, and how crowded their films are.
    pub films: Films<R>,
    /// Light and shade in each stand; worked out while the light is on.
    pub canopies: [Canopy<R>; MAX_STANDS],
}

impl<R: Real> Water<R> {
    /// The amount of a pool.
    #[inline(always)]
    pub fn amount(&self, pool: Pool) -> R {
        self.state[pool]
    }
    /// The value of a temperature factor.
    #[inline(always)]
    pub fn factor(&self, factor: Factor) -> R {
        self.factors.get(factor)
    }
    /// Water above the soil, L.
    #[inline(always)]
    pub fn volume(&self) -> R {
        self.state[Pool::Volume]
    }
    /// Temperature, °C.
    #[inline(always)]
    pub fn temperature(&self) -> R {
        self.state[Pool::Temperature]
    }
    /// A water in which nothing has been worked out yet.
    pub fn blank() -> Self {
        let none = R::zero();
        Water {
            state: State::default(),
            held: Held::quiet(),
            days: none,
            warms_by_course: false,
            factors: Factors::default(),
            tan: none,
            nitrite: none,
            nitrate: none,
            phosphate: none,
            potassium: none,
            iron: none,
            oxygen: none,
            carbon: none,
            alkalinity: none,
            residual: none,
            hydrogen: R::of(1e-7),
            inverse_hydrogen: R::of(1e7),
            co2: none,
            bicarbonate: none,
            free_ammonia: none,
            nitrous_acid: none,
            oxic: none,
            pore_tan: none,
            pore_phosphate: none,
            films: Films::none(),
            canopies: [Canopy::bare(); MAX_STANDS],
        }
    }
    /// CO2, mg/L.
    pub fn co2_mg_per_l(&self) -> R {
        self.co2 * R::of(CO2_G_PER_MOL)
    }
}
