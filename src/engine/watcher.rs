//! Somebody who looks at the tanks as they go.

use crate::base::real::Real;
use crate::model::water::Water;

use super::event::Event;
use super::result::{Reading, Side};
use super::simulation::Simulation;

/// Somebody who looks at the tanks as they go. What is looked at never changes how they go.
pub trait Watcher<R: Real = f64> {
    /// Glances at the water at the start of every step, as rate laws see it: quicker than a reading.
    fn glance(&mut self, _minute: u32, _water: &Water<R>) {}
    /// Whether this minute is of interest (before it is read).
    fn wants(&self, minute: u32, side: Side) -> bool;
    /// Sees the tanks at a minute it wanted.
    fn see(&mut self, reading: &Reading<R>, tanks: &Simulation<'_, R>);
    /// Sees an event, as the first lane has it, with the tanks just before and after it.
    fn happened(&mut self, event: &Event, litres: R, before: &Reading<R>, after: &Reading<R>);
    /// Whether whatever comes from a midnight on is of no interest, so that the run may end there.
    fn has_seen_enough(&self, _midnight: u32) -> bool {
        false
    }
    /// Every how many minutes the step that begins at this one is to be looked into. Of one tank
    /// only, not of several side by side.
    fn close_up(&self, _minute: u32) -> Option<u32> {
        None
    }
    /// Sees the tank inside a step.
    fn see_inside(&mut self, _reading: &Reading<R>) {}
}

/// Any number who look at the same tanks. They are called by way of a table, so that the steps, which are
/// built anew for each kind of watcher, are built once for all of them.
pub struct Eyes<'e, 'w, R: Real>(
    /// Who looks.
    pub &'e mut [&'w mut dyn Watcher<R>],
);

impl<R: Real> Watcher<R> for Eyes<'_, '_, R> {
    fn glance(&mut self, minute: u32, water: &Water<R>) {
        self.0.iter_mut().for_each(|one| one.glance(minute, water));
    }
    fn wants(&self, minute: u32, side: Side) -> bool {
        self.0.iter().any(|one| one.wants(minute, side))
    }
    fn see(&mut self, reading: &Reading<R>, tanks: &Simulation<'_, R>) {
        for one in self.0.iter_mut() {
            if reading.side != Side::Plain || one.wants(reading.minute, reading.side) {
                one.see(reading, tanks);
            }
        }
    }
    fn happened(&mut self, event: &Event, litres: R, before: &Reading<R>, after: &Reading<R>) {
        for one in self.0.iter_mut() {
            one.happened(event, litres, before, after);
        }
    }
    fn has_seen_enough(&self, midnight: u32) -> bool {
        !self.0.is_empty() && self.0.iter().all(|one| one.has_seen_enough(midnight))
    }
    fn close_up(&self, minute: u32) -> Option<u32> {
        self.0.iter().find_map(|one| one.close_up(minute))
    }
    fn see_inside(&mut self, reading: &Reading<R>) {
        self.0.iter_mut().for_each(|one| one.see_inside(reading));
    }
}
