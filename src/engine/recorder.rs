//! Writes down a run as it goes.

use crate::base::clock::{DAY, HOUR};
use crate::model::matrix::Matrix;
use crate::model::pool::Pool;
use crate::model::processes;

use super::close_ups::CloseUps;
use super::event::Event;
use super::happening::Crossed;
use super::plan::Plan;
use super::result::{EventRecord, Reading, Side, Tally};
use super::simulation::Simulation;
use super::watcher::Watcher;

/// Writes down readings at the start of every step and tallies at every full hour, both on both
/// sides of every event.
pub struct Recorder {
    /// Readings so far.
    pub readings: Vec<Reading>,
    /// Tallies so far.
    pub tallies: Vec<Tally>,
    /// Events so far.
    pub events: Vec<EventRecord>,
    /// Readings inside steps.
    pub close_ups: Vec<Reading>,
    closely: CloseUps,
    alkalinity: Vec<(usize, f64)>,
    tan: Vec<(usize, f64)>,
}

/// Places kept for readings on both sides of events, so that a usual run never grows its lists.
const ROOM_FOR_EVENTS: usize = 256;

impl Recorder {
    /// A recorder for a plan, which looks closely at some days.
    pub fn new(plan: &Plan, closely: CloseUps) -> Self {
        let model = &plan.model;
        let minutes = plan.input.final_minute() - plan.input.filled_at;
        let by_process = |pool: Pool| {
            let column = model.matrix().column(pool);
            model
                .rows()
                .iter()
                .map(|(process, _)| *process)
                .zip(column)
                .collect()
        };
        Recorder {
            readings: Vec::with_capacity(
                minutes as usize / plan.input.step_minutes.max(1) as usize + ROOM_FOR_EVENTS,
            ),
            tallies: Vec::new(),
            events: Vec::new(),
            close_ups: Vec::new(),
            closely,
            alkalinity: by_process(Pool::Alkalinity),
            tan: by_process(Pool::Tan),
        }
    }
}

impl Watcher for Recorder {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }

    fn see(&mut self, reading: &Reading, tank: &Simulation<'_>) {
        self.readings.push(*reading);
        if self.is_due(reading) {
            self.tallies.push(Tally {
                minute: reading.minute,
                side: reading.side,
                crossed: crossed(tank.plan.model.matrix(), &tank.extents, &tank.crossed),
                alkalinity_meq: by_process(&self.alkalinity, &tank.extents),
                tan_mg_n: by_process(&self.tan, &tank.extents),
            });
        }
    }

    fn happened(&mut self, event: &Event, litres: f64, before: &Reading, after: &Reading) {
        self.events.push(EventRecord {
            minute: event.minute,
            name: event.name.clone(),
            what: event.kind.words(),
            litres,
            before: *before,
            after: *after,
        });
    }

    fn close_up(&self, minute: u32) -> Option<u32> {
        self.closely.at(minute)
    }

    fn see_inside(&mut self, reading: &Reading) {
        self.close_ups.push(*reading);
    }
}

impl Recorder {
    /// Accounts are for charts, and those are drawn of runs that are looked at closely: hourly and at
    /// events there, at midnights elsewhere.
    fn is_due(&self, reading: &Reading) -> bool {
        let every = if self.closely.is_none() { DAY } else { HOUR };
        self.tallies.is_empty()
            || reading.minute.is_multiple_of(every)
            || (reading.side != Side::Plain && !self.closely.is_none())
    }
}

fn by_process(rows: &[(usize, f64)], extents: &[f64]) -> Vec<f64> {
    let mut sums = vec![0.0; processes::IDS.len()];
    for ((process, amount), extent) in rows.iter().zip(extents) {
        sums[*process] += amount * extent;
    }
    sums
}

/// What rows and events together have carried across the boundary.
pub fn crossed(matrix: &Matrix<f64>, extents: &[f64], by_events: &Crossed) -> Crossed {
    let mut all = matrix.crossed(extents);
    for (ways, more) in all.iter_mut().zip(by_events) {
        for (amount, extra) in ways.iter_mut().zip(more) {
            *amount += extra;
        }
    }
    all
}
