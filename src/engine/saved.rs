//! A run put aside: what of a tank under way must be kept so that going on gives the same bits.
//!
//! Numbers are kept as their bits, since the text of a number may lose its last one on the way. What
//! the plan knows (timers, events, which animals are in by now) is not kept: a saved run goes on with
//! the plan it began with. Readings, tallies and tunings so far belong to those who watched.

use serde::{Deserialize, Serialize};

use crate::base::clock::{TimeOfDay, Window};
use crate::model::pool::POOLS;
use crate::model::state::State;

use super::event::EventKind;
use super::input::TimerLine;
use super::memory::Memory;
use super::plan::Plan;
use super::result::Work;
use super::simulation::Simulation;
use super::valve::{Setting, Valves};
use super::work::Counts;

/// A tank under way, put aside.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SavedRun {
    minute: u32,
    pools: Vec<u64>,
    extents: Vec<u64>,
    crossed: Vec<u64>,
    /// Activity of H+ and its drift, where the next search for the pH begins, and how closely steps are
    /// looked at.
    memory: [u64; 4],
    /// The gas of the day: first day of its line, on, off, mg/h.
    gas: Option<(u32, u32, u32, u64)>,
    /// What stands on the valve: mg/h, the lead in minutes, and what more gas does.
    valve: Option<(u64, u32, Option<u64>)>,
    first_day_was_short: bool,
    /// Steps, parts, parts held back.
    work: [u64; 3],
}

/// Why a saved run cannot go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("the saved run is not one of this plan")]
pub struct OfAnotherPlan;

impl SavedRun {
    /// Puts a tank and its valve aside.
    ///
    /// Going on gives the bits of a run that was never stopped, if the tank stands where a step ends
    /// (on the grid of steps, at a switch or at an event); elsewhere the stop itself cut a step.
    pub fn of(tank: &Simulation<'_>, valves: &Valves<'_>) -> SavedRun {
        let (memory, work, valve) = (tank.stepper.memory(), tank.work(0), &valves.lanes[0]);
        SavedRun {
            minute: tank.minute,
            pools: bits(&tank.state.0),
            extents: bits(&tank.extents),
            crossed: bits(tank.crossed.as_flattened()),
            memory: [memory.hydrogen, memory.drift, memory.closer, memory.stirred]
                .map(f64::to_bits),
            gas: tank.keeping.gas[0].map(|line| {
                let Window { on, off } = line.window;
                (line.from_day, on.0, off.0, line.value.to_bits())
            }),
            valve: (valve.setting).map(|set| {
                let gain = set.mg_per_l_and_mg_per_h.map(f64::to_bits);
                (set.gas_mg_per_h.to_bits(), set.lead_minutes, gain)
            }),
            first_day_was_short: valve.first_day_was_short,
            work: [work.steps, work.parts, work.held_back],
        }
    }

    /// The tank and its valve, ready to go on.
    ///
    /// # Errors
    /// When the plan is another one: it has other processes, or was filled later.
    pub fn resume<'a>(
        &self,
        plan: &'a Plan,
    ) -> Result<(Simulation<'a>, Valves<'a>), OfAnotherPlan> {
        let (mut tank, mut valves) = (Simulation::filled(plan), Valves::new(plan));
        let pools = <[f64; POOLS]>::try_from(numbers(&self.pools)).map_err(|_| OfAnotherPlan)?;
        let crossed = tank.crossed.as_flattened_mut();
        let same = self.extents.len() == tank.extents.len()
            && self.crossed.len() == crossed.len()
            && self.minute >= plan.input.filled_at;
        if !same {
            return Err(OfAnotherPlan);
        }
        crossed.copy_from_slice(&numbers(&self.crossed));
        tank.minute = self.minute;
        tank.state = State(pools);
        tank.extents = numbers(&self.extents);
        tank.keeping.gas = vec![self.gas.map(line)];
        tank.keeping.animals = vec![self.animals(plan)];
        let [hydrogen, drift, closer, stirred] = self.memory.map(f64::from_bits);
        tank.stepper.recall(Memory {
            hydrogen,
            drift,
            closer,
            stirred,
        });
        let [steps, parts, held_back] = self.work;
        tank.counts = Counts::of(Work {
            steps,
            parts,
            held_back,
            ..Work::default()
        });
        let valve = &mut valves.lanes[0];
        valve.first_day_was_short = self.first_day_was_short;
        valve.setting = self.valve.map(|(gas, lead_minutes, gain)| Setting {
            gas_mg_per_h: f64::from_bits(gas),
            lead_minutes,
            mg_per_l_and_mg_per_h: gain.map(f64::from_bits),
        });
        Ok((tank, valves))
    }

    /// Animals that went in before the minute: its own events are still to come.
    fn animals(&self, plan: &Plan) -> Vec<super::event::Animals> {
        let past = plan.lanes[0].events.iter();
        past.take_while(|event| event.minute < self.minute)
            .filter_map(|event| match event.kind {
                EventKind::Stock(animals) => Some(animals),
                _ => None,
            })
            .collect()
    }
}

fn line((from_day, on, off, value): (u32, u32, u32, u64)) -> TimerLine {
    TimerLine {
        from_day,
        window: Window {
            on: TimeOfDay(on),
            off: TimeOfDay(off),
        },
        value: f64::from_bits(value),
    }
}

fn bits(numbers: &[f64]) -> Vec<u64> {
    numbers.iter().map(|number| number.to_bits()).collect()
}

fn numbers(bits: &[u64]) -> Vec<f64> {
    bits.iter().map(|&bits| f64::from_bits(bits)).collect()
}
