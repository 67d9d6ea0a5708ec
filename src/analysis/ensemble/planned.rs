//! Watches tanks as planned: their figures, and what bands are made of.

use crate::analysis::figures::FigureWatch;
use crate::base::real::Real;
use crate::engine::event::Event;
use crate::engine::result::{Reading, Side};
use crate::engine::simulation::{Simulation, Watcher};

use super::days::DayWatch;

/// Watches tanks as planned.
#[derive(Debug, Clone)]
pub struct PlannedWatch<R> {
    /// Their figures.
    pub figures: FigureWatch<R>,
    /// Their days.
    pub days: DayWatch<R>,
}

impl<R: Real> Watcher<R> for PlannedWatch<R> {
    #[inline(always)]
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    #[inline(always)]
    fn see(&mut self, reading: &Reading<R>, _: &Simulation<'_, R>) {
        self.figures.see(reading);
        self.days.see(reading);
    }
    fn has_seen_enough(&self, midnight: u32) -> bool {
        self.figures.is_over(midnight)
    }
    fn happened(&mut self, _: &Event, litres: R, before: &Reading<R>, after: &Reading<R>) {
        self.figures.happened(litres, before, after);
    }
}
