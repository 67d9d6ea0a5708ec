//! Tanks under way, side by side: their state at one minute, and how to take them to a later one.

use crate::base::abreast::{Work as Wide, wide};
use crate::base::clock::{self, DAY};
use crate::base::real::Real;
use crate::model::conserved::{FLUXES, QUANTITIES};
use crate::model::held::Held;
use crate::model::state::State;

use super::error::RunError;
use super::event::EventKind;
use super::happening::{Crossed, Hands};
use super::inside::Inside;
use super::plan::{Keeping, Plan};
use super::result::{Reading, Side, Work};
use super::shortening::parts;
use super::step::{Books, Stepper, Stretch};
pub use super::watcher::Watcher;
use super::work::Counts;

/// Tanks under way, one per lane; mostly one. A copy is a saved run: going on from it gives the same
/// bits.
#[derive(Clone)]
pub struct Simulation<'a, R: Real = f64> {
    /// What does not change.
    pub plan: &'a Plan<R>,
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// The pools.
    pub state: State<R>,
    /// Extent of every row since filling.
    pub extents: Vec<R>,
    /// What events have carried across the boundary since filling.
    pub crossed: Crossed<R>,
    /// Gas setting and animals.
    pub keeping: Keeping,
    /// What ended the run of a lane, if something did. Such a lane stands as it was filled.
    pub failed: Vec<Option<RunError>>,
    pub(super) stepper: Stepper<R>,
    pub(super) counts: Counts<R>,
}

impl<'a, R: Real> Simulation<'a, R> {
    /// Tanks that have just been filled.
    pub fn filled(plan: &'a Plan<R>) -> Self {
        Simulation {
            plan,
            minute: plan.input.filled_at,
            state: plan.start,
            extents: vec![R::zero(); plan.model.matrix().rows()],
            crossed: [[R::zero(); QUANTITIES.len()]; FLUXES.len()],
            keeping: Keeping::new(R::LANES),
            failed: vec![None; R::LANES],
            counts: Counts::default(),
            stepper: Stepper::new(&plan.model),
        }
    }

    /// Work done since filling, in one lane.
    pub fn work(&self, lane: usize) -> Work {
        self.counts.lane(lane)
    }

    /// The amounts in the pools of one lane.
    pub fn pools(&self, lane: usize) -> State<f64> {
        State(self.state.0.map(|amount| amount.lane(lane)))
    }

    /// Takes the tanks to a minute of the same day, or to its closing midnight.
    ///
    /// # Errors
    /// The first impossible number, with its cause, when no lane is left without one.
    pub fn advance(&mut self, until: u32, watcher: &mut impl Watcher<R>) -> Result<(), RunError> {
        let day = self.minute / DAY;
        let switches = self.plan.switches(day, &self.keeping.gas);
        let instants = self.plan.instants(day, &switches);
        while self.minute < until {
            let next = instants
                .iter()
                .copied()
                .find(|&minute| minute > self.minute)
                .unwrap_or(until)
                .min(until);
            self.events_of_this_minute(watcher);
            let held = self.plan.held(self.minute, &self.keeping);
            let stirred = match switches.contains(&self.minute) {
                true => self.plan.stirred(self.minute, &self.keeping.gas),
                false => R::zero(),
            };
            wide(Steps {
                tanks: self,
                held: &held,
                stirred,
                until: next,
                watcher,
            })?;
        }
        Ok(())
    }

    /// Looks at the tanks as they stand and shows them to the watcher (the last look of a run).
    pub fn show(&mut self, watcher: &mut impl Watcher<R>) {
        let held = self.plan.held(self.minute, &self.keeping);
        if watcher.wants(self.minute, Side::Plain) {
            let reading = self.read(&held, Side::Plain);
            watcher.see(&reading, self);
        }
    }

    #[inline(always)]
    fn step(
        &mut self,
        held: &Held<R>,
        (happened, next): (bool, u32),
        watcher: &mut impl Watcher<R>,
    ) {
        let plan = self.plan;
        let grid = plan.input.step_minutes;
        let until = ((self.minute / grid + 1) * grid).min(next);
        let from_days = clock::days(self.minute);
        let days = clock::days(until - self.minute);
        let stirred = self.stepper.memory().stirred;
        let water = (self.stepper).look(&plan.model, &self.state, held, R::of(from_days));
        let parts = parts(&plan.model, water, days, (stirred, &plan.shortening));
        watcher.glance(self.minute, water);
        if !happened && watcher.wants(self.minute, Side::Plain) {
            let mut reading = (plan.gauge).read(&plan.model, water, self.minute, Side::Plain);
            reading.gas_used_g = plan.gauge.gas_used_g(&self.extents);
            watcher.see(&reading, self);
        }
        let stretch = Stretch {
            from_days,
            days,
            held,
        };
        let mut inside = Inside::new(plan, held, self.minute..until, watcher);
        self.stepper.advance(
            (&plan.model, Some(plan)),
            &stretch,
            parts,
            Books {
                state: &mut self.state,
                totals: &mut self.extents,
                counts: &mut self.counts,
            },
            |stepper, part| inside.look(stepper, part),
        );
        self.minute = until;
    }

    /// Whether events have just been shown for this minute.
    fn happens_now(&self) -> bool {
        let events = &self.plan.lanes[0].events;
        let first = events.partition_point(|event| event.minute < self.minute);
        events
            .get(first)
            .is_some_and(|event| event.minute == self.minute)
    }

    fn events_of_this_minute(&mut self, watcher: &mut impl Watcher<R>) {
        let plan = self.plan;
        let events = &plan.lanes[0].events;
        let first = events.partition_point(|event| event.minute < self.minute);
        let today = &events[first..];
        let count = today.partition_point(|event| event.minute == self.minute);
        if count == 0 {
            return;
        }
        let mut before = self.reading_now(Side::Before);
        watcher.see(&before, self);
        for (place, event) in today[..count].iter().enumerate() {
            let litres = R::gather(|lane| {
                let kind = &plan.lanes[lane].events[first + place].kind;
                self.apply(lane, kind)
            });
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

    fn apply(&mut self, lane: usize, kind: &EventKind) -> f64 {
        if let EventKind::Stock(animals) = kind {
            self.keeping.animals[lane].push(*animals);
        }
        let mut state = self.pools(lane);
        let mut crossed = self.crossed.map(|way| way.map(|amount| amount.lane(lane)));
        let litres = Hands {
            plan: &self.plan.lanes[lane],
            state: &mut state,
            crossed: &mut crossed,
        }
        .apply(kind);
        for (all, own) in self.state.0.iter_mut().zip(&state.0) {
            all.set_lane(lane, *own);
        }
        let ways = self.crossed.as_flattened_mut().iter_mut();
        for (all, own) in ways.zip(crossed.as_flattened()) {
            all.set_lane(lane, *own);
        }
        litres
    }

    fn reading_now(&mut self, side: Side) -> Reading<R> {
        let held = self.plan.held(self.minute, &self.keeping);
        self.read(&held, side)
    }

    fn read(&mut self, held: &Held<R>, side: Side) -> Reading<R> {
        let plan = self.plan;
        let days = R::of(clock::days(self.minute));
        let water = self.stepper.look(&plan.model, &self.state, held, days);
        let mut reading = plan.gauge.read(&plan.model, water, self.minute, side);
        reading.gas_used_g = plan.gauge.gas_used_g(&self.extents);
        reading
    }
}

/// The steps up to the next switch or event: where a run spends its time.
struct Steps<'s, 'p, R: Real, W> {
    tanks: &'s mut Simulation<'p, R>,
    held: &'s Held<R>,
    /// Where something has just been switched or has happened: one there, nothing elsewhere.
    stirred: R,
    until: u32,
    watcher: &'s mut W,
}

impl<R: Real, W: Watcher<R>> Wide for Steps<'_, '_, R, W> {
    type Output = Result<(), RunError>;

    #[inline(always)]
    fn go(self) -> Result<(), RunError> {
        self.tanks.stepper.stir(self.stirred);
        let mut happened = self.tanks.happens_now();
        while self.tanks.minute < self.until {
            let next = (happened, self.until);
            self.tanks.step(self.held, next, self.watcher);
            happened = false;
            self.tanks.check()?;
        }
        Ok(())
    }
}
