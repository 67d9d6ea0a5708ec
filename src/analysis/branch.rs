//! Branches of runs without animals: the planned animals go in at noon of a candidate day.

use crate::base::clock::{DAY, HOUR};
use crate::base::real::Real;
use crate::engine::error::RunError;
use crate::engine::event::{Animals, Event, EventKind};
use crate::engine::input::ModelInput;
use crate::engine::moment::Moment;
use crate::engine::plan::Plan;
use crate::engine::result::{Reading, Side};
use crate::engine::simulation::{Simulation, Watcher};
use crate::engine::watcher::Eyes;

use super::broken::RunningWatch;
use super::limits::Limits;
use super::ripening::Ripening;
use super::stocking::{DAYS_WITH_ANIMALS, Search, Stocked};

/// Animals go in at this minute of the day.
const NOON: u32 = 12 * HOUR;

/// All animals that a plan puts in within the judged run; their days do not matter.
pub fn planned_animals(input: &ModelInput) -> Vec<Animals> {
    let end = input.end_minute();
    let events = input.events.iter().filter(|event| event.minute < end);
    events
        .filter_map(|event| match event.kind {
            EventKind::Stock(animals) => Some(animals),
            _ => None,
        })
        .collect()
}

/// Keeps the tanks at every noon.
#[derive(Debug)]
pub struct Noons<R: Real = f64> {
    kept: Vec<Moment<R>>,
    until: u32,
}

impl<R: Real> Default for Noons<R> {
    fn default() -> Self {
        Noons::until(u32::MAX)
    }
}

impl<R: Real> Noons<R> {
    /// Of the noons up to a minute.
    pub fn until(minute: u32) -> Self {
        Noons {
            kept: Vec::new(),
            until: minute,
        }
    }
    /// The noon of a day, if it was kept.
    pub fn of_day(&self, day: u32) -> Option<&Moment<R>> {
        let minute = day * DAY + NOON;
        self.kept.iter().find(|moment| moment.minute() == minute)
    }
}

impl<R: Real> Watcher<R> for Noons<R> {
    #[inline(always)]
    fn wants(&self, minute: u32, _: Side) -> bool {
        minute % DAY == NOON
    }
    #[inline(always)]
    fn see(&mut self, reading: &Reading<R>, tanks: &Simulation<'_, R>) {
        // events of noon are still to come in a branch
        if reading.minute % DAY == NOON && reading.side != Side::After {
            self.kept.push(Moment::of(tanks));
        }
    }
    fn has_seen_enough(&self, midnight: u32) -> bool {
        self.until <= midnight
    }
    fn happened(&mut self, _: &Event, _: R, _: &Reading<R>, _: &Reading<R>) {}
}

/// What a branch needs to know.
pub struct Branch<'a, R: Real = f64> {
    /// The plan without animals.
    pub plan: &'a Plan<R>,
    /// Limits to judge by.
    pub limits: &'a Limits,
    /// The animals of each lane; none where they stay out.
    pub animals: &'a [Vec<Animals>],
}

/// What is known of one lane: its search, or why its run failed.
pub type Searched = Result<Search, RunError>;

impl Branch<'_> {
    /// Carries the search of one tank to its end, from its run without animals at every noon.
    ///
    /// # Errors
    /// Those of the runs with animals.
    pub fn search(&self, noons: &Noons, mut search: Search) -> Searched {
        while let Some(day) = search.day() {
            let noon = noons.of_day(day).expect(EVERY_NOON);
            let came = self.stock(noon).remove(0);
            search.learn(came?);
        }
        Ok(search)
    }
}

/// What is kept of a run without animals.
pub const EVERY_NOON: &str = "every whole day has a noon";

impl<R: Real> Branch<'_, R> {
    /// Puts the animals in at a noon, and sees what comes of it in each lane.
    pub fn stock(&self, noon: &Moment<R>) -> Vec<Result<Stocked, RunError>> {
        let mut branch = noon.branch(self.plan);
        for (own, planned) in branch.tanks.keeping.animals.iter_mut().zip(self.animals) {
            own.extend(planned);
        }
        let mut watch = WithAnimals::new(self, noon.minute());
        let until = noon.minute() + DAYS_WITH_ANIMALS * DAY;
        let until = until.min(self.plan.input.final_minute());
        let mut ended = Ok(());
        while ended.is_ok() && branch.tanks.minute < until && !watch.is_lost() {
            let midnight = (branch.tanks.minute / DAY + 1) * DAY;
            ended = branch.take(midnight.min(until), &mut Eyes(&mut [&mut watch]));
        }
        branch.tanks.show(&mut Eyes(&mut [&mut watch]));
        (0..R::LANES)
            .map(|lane| match (&branch.tanks.failed[lane], &ended) {
                (Some(why), _) => Err(why.clone()),
                (None, Err(why)) => Err(why.clone()),
                (None, Ok(())) => Ok(watch.lane(lane)),
            })
            .collect()
    }
}

/// Watches the first days with animals.
struct WithAnimals<R> {
    limits: Limits,
    from: u32,
    /// Place in [`Ripening::ALL`] of the limit broken first, counted from 1; 0 while none is.
    broke: R,
    running: RunningWatch<R>,
}

impl<R: Real> WithAnimals<R> {
    fn new(branch: &Branch<'_, R>, from: u32) -> Self {
        let shrimp_from = R::gather(|lane| {
            let shrimp = branch.animals[lane].iter().any(|group| group.shrimp);
            if shrimp {
                f64::from(from)
            } else {
                f64::INFINITY
            }
        });
        WithAnimals {
            limits: *branch.limits,
            from,
            broke: R::zero(),
            running: RunningWatch::new(branch.limits, shrimp_from),
        }
    }
    /// Whether every lane has broken a limit.
    fn is_lost(&self) -> bool {
        (0..R::LANES).all(|lane| self.broke.lane(lane) > 0.0)
    }
    fn lane(&self, lane: usize) -> Stocked {
        let place = self.broke.lane(lane) as usize;
        Stocked {
            broke: place.checked_sub(1).map(|at| Ripening::ALL[at]),
            running: self.running.lane(lane),
        }
    }
}

impl<R: Real> Watcher<R> for WithAnimals<R> {
    #[inline(always)]
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    #[inline(always)]
    fn see(&mut self, r: &Reading<R>, _: &Simulation<'_, R>) {
        // animals go in after whatever else happens at noon
        if r.minute == self.from && r.side == Side::Before {
            return;
        }
        let held_so_far = self.broke.below(R::one());
        for (at, limit) in Ripening::ALL.into_iter().enumerate().rev() {
            let place = R::of((at + 1) as f64);
            let broken = R::pick(limit.broken(&self.limits, r), place, self.broke);
            self.broke = R::pick(held_so_far, broken, self.broke);
        }
        self.running.see(r);
    }
    fn happened(&mut self, _: &Event, litres: R, before: &Reading<R>, after: &Reading<R>) {
        if before.minute > self.from {
            self.running.happened(litres, before, after);
        }
    }
}
