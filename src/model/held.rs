//! What is switched in a tank.

use std::array::from_fn;

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
    /// 1 for stands that are shedding their out-of-water tissue, 0 for others.
    pub shedding: [R; MAX_STANDS],
    /// Animals in the tank, g.
    pub animals_g: R,
    /// Feed eaten, g/day.
    pub feed_g_per_day: R,
    /// Nitrogen of that feed, mg N/day.
    pub feed_mg_n_per_day: R,
}

impl<R: Real> Held<R> {
    /// Settings side by side. What is on or off is so in all lanes.
    pub fn abreast(of: &[Held<f64>]) -> Self {
        let all = |number: fn(&Held<f64>) -> f64| R::gather(|lane| number(&of[lane]));
        let first = &of[0];
        let cut_off = |held: &Held<f64>| held.cut_off_mmol_per_l.unwrap_or(f64::INFINITY);
        Held {
            light_umol_per_m2_s: all(|held| held.light_umol_per_m2_s),
            lit: first.lit,
            gas_mmol_per_day: all(|held| held.gas_mmol_per_day),
            cut_off_mmol_per_l: (first.cut_off_mmol_per_l)
                .map(|_| R::gather(|lane| cut_off(&of[lane]))),
            air_l_per_min: all(|held| held.air_l_per_min),
            airing: first.airing,
            power: first.power,
            shedding: from_fn(|stand| R::gather(|lane| of[lane].shedding[stand])),
            animals_g: all(|held| held.animals_g),
            feed_g_per_day: all(|held| held.feed_g_per_day),
            feed_mg_n_per_day: all(|held| held.feed_mg_n_per_day),
        }
    }
    /// What is switched in one lane.
    pub fn lane(&self, lane: usize) -> Held<f64> {
        Held {
            light_umol_per_m2_s: self.light_umol_per_m2_s.lane(lane),
            lit: self.lit,
            gas_mmol_per_day: self.gas_mmol_per_day.lane(lane),
            cut_off_mmol_per_l: self.cut_off_mmol_per_l.map(|held| held.lane(lane)),
            air_l_per_min: self.air_l_per_min.lane(lane),
            airing: self.airing,
            power: self.power,
            shedding: self.shedding.map(|share| share.lane(lane)),
            animals_g: self.animals_g.lane(lane),
            feed_g_per_day: self.feed_g_per_day.lane(lane),
            feed_mg_n_per_day: self.feed_mg_n_per_day.lane(lane),
        }
    }
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
            shedding: [R::zero(); MAX_STANDS],
            animals_g: R::zero(),
            feed_g_per_day: R::zero(),
            feed_mg_n_per_day: R::zero(),
        }
    }
}
