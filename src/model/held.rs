//! What is switched in a tank.

use crate::base::real::Real;

use super::pool::MAX_STANDS;

/// What is switched, held over a whole step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held<R> {
    /// Light at the soil, µmol/m²/s; 0 in the dark.
    pub light_umol_per_m2_s: R,
    /// Whether it is light.
    pub lit: bool,
    /// Carbon dioxide dissolving from the cylinder, mmol/day.
    pub gas_mmol_per_day: R,
    /// Concentration at which a controller closes the valve, mmol/L, if there is one.
    pub cut_off_mmol_per_l: Option<R>,
    /// Air through the stone, L/min.
    pub air_l_per_min: R,
    /// Whether the air stone runs.
    pub airing: bool,
    /// Whether the mains are on: filter flow, heater, pump.
    pub power: bool,
    /// Which stands are shedding their out-of-water tissue.
    pub shedding: [bool; MAX_STANDS],
    /// Animals in the tank, g.
    pub animals_g: R,
    /// Feed eaten, g/day.
    pub feed_g_per_day: R,
    /// Nitrogen of that feed, mg N/day.
    pub feed_mg_n_per_day: R,
}

impl<R: Real> Held<R> {
    /// Nothing switched on, the mains running, no animals.
    pub fn quiet() -> Self {
        Held {
            light_umol_per_m2_s: R::zero(),
            lit: false,
            gas_mmol_per_day: R::zero(),
            cut_off_mmol_per_l: None,
            air_l_per_min: R::zero(),
            airing: false,
            power: true,
            shedding: [false; MAX_STANDS],
            animals_g: R::zero(),
            feed_g_per_day: R::zero(),
            feed_mg_n_per_day: R::zero(),
        }
    }
}
