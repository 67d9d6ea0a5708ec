//! What a test gives back.

use crate::base::clock::days;
use crate::engine::event::Event;
use crate::engine::result::{Reading, Side, Work};
use crate::engine::simulation::{Simulation, Watcher};
use crate::model::state::State;

/// The vessel at one instant.
#[derive(Debug, Clone)]
pub struct Sample {
    /// Days from the beginning.
    pub days: f64,
    /// Amounts of all pools, per vessel.
    pub state: State<f64>,
    /// Concentrations, pH, capacities: everything that can be read off. What is given per area of a
    /// vessel without that area is not a number.
    pub reading: Reading,
}

/// The course of a test: a sample at every step of the clock, and both sides of whatever was done.
#[derive(Debug, Clone)]
pub struct Trajectory {
    samples: Vec<Sample>,
    /// How much work it was.
    pub work: Work,
}

impl Trajectory {
    /// All samples, in the order of time.
    pub fn samples(&self) -> &[Sample] {
        &self.samples
    }
    /// The vessel at the beginning.
    pub fn first(&self) -> &Sample {
        &self.samples[0]
    }
    /// The vessel at the end.
    pub fn last(&self) -> &Sample {
        &self.samples[self.samples.len() - 1]
    }
    /// The vessel at a time in days: the last sample up to then, after whatever was done then; none
    /// before the beginning.
    pub fn at(&self, days: f64) -> Option<&Sample> {
        let count = self.samples.partition_point(|sample| sample.days <= days);
        count.checked_sub(1).map(|last| &self.samples[last])
    }
    /// The samples taken just before something was done.
    pub fn before_events(&self) -> impl Iterator<Item = &Sample> {
        self.samples
            .iter()
            .filter(|sample| sample.reading.side == Side::Before)
    }
}

/// Takes the samples.
#[derive(Default)]
pub(super) struct Sampler(Vec<Sample>);

impl Sampler {
    /// The course so far. At least one sample has been taken.
    pub(super) fn trajectory(self, work: Work) -> Trajectory {
        Trajectory {
            samples: self.0,
            work,
        }
    }
}

impl Watcher for Sampler {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, reading: &Reading, tank: &Simulation<'_>) {
        self.0.push(Sample {
            days: days(reading.minute),
            state: tank.state,
            reading: *reading,
        });
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}
