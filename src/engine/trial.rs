//! One trial of a day with a setting of the valve: the highest CO2 that came of it.

use crate::base::real::Real;

use super::event::Event;
use super::result::{Reading, Side};
use super::simulation::Simulation;
use super::watcher::Watcher;

/// What one trial of a day gave in one tank.
#[derive(Debug, Clone, Copy)]
pub(super) struct Trial {
    pub(super) gas_mg_per_h: f64,
    pub(super) highest: f64,
    pub(super) at_lights_on: Option<f64>,
}

/// Watches a day for its highest carbon dioxide from the gas coming on, and for that at lights-on.
/// What the night before left over is not the valve's doing: counted in, it would hide how little
/// or how much today's setting gives.
pub(super) struct Watch<R> {
    from: Vec<u32>,
    highest: R,
    lights_on: Option<u32>,
    at_lights_on: Option<R>,
}

impl<R: Real> Watch<R> {
    /// Watches from a minute on, one per lane.
    pub(super) fn new(from: Vec<u32>, lights_on: Option<u32>) -> Self {
        Watch {
            from,
            highest: R::zero(),
            lights_on,
            at_lights_on: None,
        }
    }

    /// What came of the day in one lane.
    pub(super) fn trial(&self, lane: usize, gas_mg_per_h: f64) -> Trial {
        Trial {
            gas_mg_per_h,
            highest: self.highest.lane(lane),
            at_lights_on: self.at_lights_on.map(|co2| co2.lane(lane)),
        }
    }
}

impl<R: Real> Watcher<R> for Watch<R> {
    #[inline(always)]
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    #[inline(always)]
    fn see(&mut self, reading: &Reading<R>, _: &Simulation<'_, R>) {
        let co2 = reading.co2_mg_per_l;
        self.highest = R::gather(|lane| {
            let highest = self.highest.lane(lane);
            if reading.minute >= self.from[lane] {
                highest.max(co2.lane(lane))
            } else {
                highest
            }
        });
        if Some(reading.minute) == self.lights_on {
            self.at_lights_on = Some(co2);
        }
    }
    fn happened(&mut self, _: &Event, _: R, _: &Reading<R>, _: &Reading<R>) {}
}
