//! A tank under way: its state at one minute, and how to take it to a later one.

use crate::base::clock::{self, DAY};
use crate::model::held::Held;
use crate::model::pool::{POOLS, Pool};
use crate::model::state::State;
use crate::model::water::Water;

use super::error::RunError;
use super::event::{Event, EventKind};
use super::happening::{Crossed, Hands};
use super::plan::{Keeping, Plan};
use super::result::{Reading, Side, Work};
use super::step::{Stepper, Stretch, parts};

/// Somebody who looks at the tank as it goes.
pub trait Watcher {
    /// Whether this minute is of interest (before it is read).
    fn wants(&self, minute: u32, side: Side) -> bool;
    /// Sees the tank at a minute it wanted.
    fn see(&mut self, reading: &Reading, tank: &Simulation<'_>);
    /// Sees an event with the tank just before and after it.
    fn happened(&mut self, event: &Event, litres: f64, before: &Reading, after: &Reading);
}

/// A tank under way. A copy is a saved run: going on from it gives the same bits.
#[derive(Clone)]
pub struct Simulation<'a> {
    /// What does not change.
    pub plan: &'a Plan,
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// The pools.
    pub state: State<f64>,
    /// Extent of every row since filling.
    pub extents: Vec<f64>,
    /// What events have carried across the boundary since filling.
    pub crossed: Crossed,
    /// Gas setting and animals.
    pub keeping: Keeping,
    /// Work done since filling.
    pub work: Work,
    stepper: Stepper<f64>,
}

impl<'a> Simulation<'a> {
    /// A tank that has just been filled.
    pub fn filled(plan: &'a Plan) -> Self {
        Simulation {
            plan,
            minute: plan.input.filled_at,
            state: plan.start,
            extents: vec![0.0; plan.model.matrix().rows()],
            crossed: Crossed::default(),
            keeping: Keeping::default(),
            work: Work::default(),
            stepper: Stepper::new(&plan.model),
        }
    }

    /// Takes the tank to a minute of the same day, or to its closing midnight.
    ///
    /// # Errors
    /// The first impossible number, with its cause.
    pub fn advance(&mut self, until: u32, watcher: &mut impl Watcher) -> Result<(), RunError> {
        let instants = self
            .plan
            .instants(self.minute / DAY, self.keeping.gas.as_ref());
        while self.minute < until {
            let next = instants
                .iter()
                .copied()
                .find(|&minute| minute > self.minute)
                .unwrap_or(until)
                .min(until);
            self.events_of_this_minute(watcher);
            let held = self.plan.held(self.minute, &self.keeping);
            while self.minute < next {
                self.step(&held, next, watcher)?;
            }
        }
        Ok(())
    }

    /// Looks at the tank as it stands and shows it to the watcher (the last look of a run).
    pub fn show(&mut self, watcher: &mut impl Watcher) {
        let held = self.plan.held(self.minute, &self.keeping);
        if watcher.wants(self.minute, Side::Plain) {
            let reading = self.read(&held, Side::Plain);
            watcher.see(&reading, self);
        }
    }

    fn step(
        &mut self,
        held: &Held<f64>,
        next: u32,
        watcher: &mut impl Watcher,
    ) -> Result<(), RunError> {
        let grid = self.plan.input.step_minutes;
        let until = ((self.minute / grid + 1) * grid).min(next);
        let from_days = clock::days(self.minute);
        let happened = self.happens_now();
        let water = self
            .stepper
            .look(&self.plan.model, &self.state, held, from_days);
        let days = f64::from(until - self.minute) / f64::from(DAY);
        let parts = parts(&self.plan.model, water, days, &self.plan.shortening);
        if !happened && watcher.wants(self.minute, Side::Plain) {
            let reading = self
                .plan
                .gauge
                .read(&self.plan.model, water, self.minute, Side::Plain);
            watcher.see(&reading, self);
        }
        let stretch = Stretch {
            from_days,
            days,
            held: *held,
        };
        self.stepper.advance(
            &self.plan.model,
            &mut self.state,
            &stretch,
            parts,
            &mut self.extents,
            &mut self.work,
        );
        self.minute = until;
        self.check()
    }

    /// Whether events have just been shown for this minute.
    fn happens_now(&self) -> bool {
        let events = &self.plan.events;
        let first = events.partition_point(|event| event.minute < self.minute);
        events
            .get(first)
            .is_some_and(|event| event.minute == self.minute)
    }

    fn events_of_this_minute(&mut self, watcher: &mut impl Watcher) {
        let plan = self.plan;
        let first = plan
            .events
            .partition_point(|event| event.minute < self.minute);
        let today = &plan.events[first..];
        let count = today.partition_point(|event| event.minute == self.minute);
        if count == 0 {
            return;
        }
        let mut before = self.reading_now(Side::Before);
        watcher.see(&before, self);
        for event in &today[..count] {
            let litres = self.apply(&event.kind);
            let after = self.reading_now(Side::After);
            watcher.happened(event, litres, &before, &after);
            before = after;
        }
        let after = Reading {
            side: Side::After,
            ..before
        };
        watcher.see(&after, self);
    }

    fn apply(&mut self, kind: &EventKind) -> f64 {
        if let EventKind::Stock(animals) = kind {
            self.keeping.animals.push(*animals);
        }
        Hands {
            plan: self.plan,
            state: &mut self.state,
            crossed: &mut self.crossed,
        }
        .apply(kind)
    }

    fn reading_now(&mut self, side: Side) -> Reading {
        let held = self.plan.held(self.minute, &self.keeping);
        self.read(&held, side)
    }

    fn read(&mut self, held: &Held<f64>, side: Side) -> Reading {
        let days = clock::days(self.minute);
        let water = self.stepper.look(&self.plan.model, &self.state, held, days);
        self.plan
            .gauge
            .read(&self.plan.model, water, self.minute, side)
    }

    fn check(&self) -> Result<(), RunError> {
        let sums = self.state.0.chunks(4).fold([0.0; 4], |mut sums, four| {
            sums.iter_mut()
                .zip(four)
                .for_each(|(sum, amount)| *sum += amount);
            sums
        });
        if sums.iter().sum::<f64>().is_finite() {
            return Ok(());
        }
        let pool = (0..POOLS)
            .find(|&pool| !self.state.0[pool].is_finite())
            .unwrap_or(0);
        let row = self.stepper.impossible_row();
        Err(RunError::Impossible {
            process: row.map_or_else(
                || "the step itself".into(),
                |row| self.plan.model.row_name(row),
            ),
            pool: format!("{:?}", Pool::at(pool)),
            day: clock::days(self.minute),
            inputs: inputs(self.stepper.water()),
        })
    }
}

fn inputs(water: &Water<f64>) -> String {
    format!(
        "{:.3} L, {:.2} °C, H+ {:e} mol/L, total ammonia {:.4}, nitrite {:.4}, nitrate {:.4}, oxygen {:.3} mg/L, \
         inorganic carbon {:.4} mmol/L, alkalinity {:.4} meq/L",
        water.volume(),
        water.temperature(),
        water.hydrogen,
        water.tan,
        water.nitrite,
        water.nitrate,
        water.oxygen,
        water.carbon,
        water.alkalinity
    )
}
