//! Tanks at one instant of a run, kept small, to branch off from there later.
//!
//! A branch goes on with the bits of the run it leaves until something is done otherwise. Unlike a
//! [`SavedRun`](super::saved::SavedRun) it stays in memory, holds tanks side by side, and forgets what has
//! crossed the boundary so far: the books of a branch begin where it does.

use crate::base::clock::DAY;
use crate::base::real::Real;
use crate::model::state::State;

use super::error::RunError;
use super::memory::Memory;
use super::plan::{Keeping, Plan};
use super::simulation::{Simulation, Watcher};
use super::valve::Valves;

/// Tanks at one instant, before its events.
#[derive(Debug, Clone)]
pub struct Moment<R: Real = f64> {
    minute: u32,
    state: State<R>,
    memory: Memory<R>,
    keeping: Keeping,
}

/// Tanks that left a run at a moment, and their valves.
pub struct BranchedOff<'a, R: Real = f64> {
    /// The tanks.
    pub tanks: Simulation<'a, R>,
    valves: Valves<'a>,
}

impl<R: Real> Moment<R> {
    /// The tanks as they stand, which must be where a step ends: on a full hour, at a switch or an event.
    pub fn of(tanks: &Simulation<'_, R>) -> Self {
        Moment {
            minute: tanks.minute,
            state: tanks.state,
            memory: tanks.stepper.memory(),
            keeping: tanks.keeping.clone(),
        }
    }

    /// One lane of each of several moments, side by side; all must be of the same minute.
    pub fn gathered(from: &[(&Moment<R>, usize)]) -> Moment<R> {
        let keeping = || from.iter().map(|&(moment, lane)| (&moment.keeping, lane));
        let all = |number: &dyn Fn(&Moment<R>, usize) -> f64| {
            R::gather(|lane| number(from[lane].0, from[lane].1))
        };
        Moment {
            minute: from[0].0.minute,
            state: State(std::array::from_fn(|pool| {
                all(&|moment, lane| moment.state.0[pool].lane(lane))
            })),
            memory: Memory {
                hydrogen: all(&|moment, lane| moment.memory.hydrogen.lane(lane)),
                drift: all(&|moment, lane| moment.memory.drift.lane(lane)),
                closer: all(&|moment, lane| moment.memory.closer.lane(lane)),
                stirred: all(&|moment, lane| moment.memory.stirred.lane(lane)),
            },
            keeping: Keeping {
                gas: keeping().map(|(own, lane)| own.gas[lane]).collect(),
                animals: keeping()
                    .map(|(own, lane)| own.animals[lane].clone())
                    .collect(),
                valves: keeping().map(|(own, lane)| own.valves[lane]).collect(),
            },
        }
    }

    /// Minutes since midnight of day 0.
    pub fn minute(&self) -> u32 {
        self.minute
    }

    /// Tanks that go on from here on their own, by the plan they had.
    pub fn branch<'a>(&self, plan: &'a Plan<R>) -> BranchedOff<'a, R> {
        let mut tanks = Simulation::filled(plan);
        tanks.minute = self.minute;
        tanks.state = self.state;
        tanks.stepper.recall(self.memory);
        tanks.keeping = self.keeping.clone();
        let valves = Valves::as_on(&tanks);
        BranchedOff { tanks, valves }
    }
}

impl<R: Real> BranchedOff<'_, R> {
    /// Takes the tanks to a minute; the gas of the day they left in stays as it was set at its midnight.
    ///
    /// # Errors
    /// Those of a run.
    pub fn take(&mut self, until: u32, watcher: &mut impl Watcher<R>) -> Result<(), RunError> {
        if !self.tanks.minute.is_multiple_of(DAY) {
            let midnight = self.tanks.minute.next_multiple_of(DAY);
            self.tanks.advance(until.min(midnight), watcher)?;
        }
        self.valves.take(&mut self.tanks, until, watcher)
    }
}

impl<'a, R: Real> Simulation<'a, R> {
    /// The same tanks with another plan from this midnight on, and their valves. Both plans must be alike
    /// in everything before it, and in all but events after it.
    pub fn with_plan(&self, plan: &'a Plan<R>) -> (Self, Valves<'a>) {
        let tanks = Simulation {
            plan,
            ..self.clone()
        };
        let valves = Valves::as_on(&tanks);
        (tanks, valves)
    }
}
