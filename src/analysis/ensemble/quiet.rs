//! Watches tanks without animals: when they are ripe, what a kit reads, and which running limits break.

use std::ops::Range;

use crate::analysis::broken::{Broken, Running, RunningWatch, taken};
use crate::analysis::limits::Limits;
use crate::analysis::ripening::{Held, RipeningWatch};
use crate::analysis::stocking::DAYS_WITH_ANIMALS;
use crate::base::clock::{DAY, HOUR};
use crate::base::real::Real;
use crate::engine::event::Event;
use crate::engine::result::{Reading, Side};
use crate::engine::simulation::{Simulation, Watcher};

use super::member::{Evening, Evenings};

/// When tests are taken (common practice, no source: in the evening, after the change and the feed).
pub const TEST_MINUTE: u32 = 20 * HOUR;

/// Watches tanks without animals.
#[derive(Debug, Clone)]
pub struct QuietWatch<R> {
    ripening: RipeningWatch<R>,
    running: RunningWatch<R>,
    /// Running limits broken on each day, from the day of filling on.
    broken: Vec<[R; Running::ALL.len()]>,
    run: Range<u32>,
    /// Day, total ammonia and nitrite of each evening.
    evenings: Vec<(u32, R, R)>,
}

impl<R: Real> QuietWatch<R> {
    /// Watches tanks from the minute of filling to the end of the run and beyond, which must be able to oxidise so
    /// much.
    pub fn new(limits: &Limits, run: Range<u32>, needed_mg_n_per_day: R) -> Self {
        QuietWatch {
            ripening: RipeningWatch::new(limits, run.clone(), needed_mg_n_per_day),
            running: RunningWatch::new(limits, R::of(f64::INFINITY)),
            broken: Vec::new(),
            run,
            evenings: Vec::new(),
        }
    }
    /// From which day on each rule holds, in one lane.
    pub fn held(&self, lane: usize) -> Held {
        self.ripening.lane(lane)
    }
    /// Whether nothing counts that happens to the tank of one lane so many days after midnight of day 0.
    pub fn is_settled(&self, days: f64, lane: usize) -> bool {
        self.ripening.is_settled(days, lane)
    }
    /// Running limits broken in one lane in the two weeks that open with a day.
    pub fn broken_after(&self, day: u32, lane: usize) -> Broken {
        let from = day.saturating_sub(self.filled_on()) as usize;
        let days = self.broken.iter().skip(from);
        days.take(DAYS_WITH_ANIMALS as usize)
            .map(|broken| taken(broken, lane))
            .fold(Broken::default(), Broken::and)
    }
    /// The evenings of the run in one lane.
    pub fn evenings(&self, lane: usize) -> Evenings {
        let evening = |(_, tan, nitrite): &(u32, R, R)| Evening {
            tan: tan.lane(lane) as f32,
            nitrite: nitrite.lane(lane) as f32,
        };
        Evenings {
            first_day: self.evenings.first().map_or(0, |(day, _, _)| *day),
            readings: self.evenings.iter().map(evening).collect(),
        }
    }

    fn filled_on(&self) -> u32 {
        self.run.start / DAY
    }

    #[inline(always)]
    fn see_evening(&mut self, reading: &Reading<R>) {
        if reading.minute % DAY != TEST_MINUTE || reading.minute >= self.run.end {
            return;
        }
        let day = reading.minute / DAY;
        let evening = (day, reading.tan_mg_n_per_l, reading.nitrite_mg_n_per_l);
        match self.evenings.last_mut() {
            // after whatever happens at that hour
            Some(last) if last.0 == day => *last = evening,
            _ => self.evenings.push(evening),
        }
    }
}

impl<R: Real> Watcher<R> for QuietWatch<R> {
    #[inline(always)]
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    #[inline(always)]
    fn see(&mut self, reading: &Reading<R>, _: &Simulation<'_, R>) {
        self.ripening.see(reading);
        self.see_evening(reading);
        let midnight =
            reading.minute.is_multiple_of(DAY) && reading.minute / DAY > self.filled_on();
        if !(midnight && reading.side == Side::After) {
            self.running.see(reading);
        }
        if midnight && reading.side != Side::After {
            self.broken.push(self.running.take());
        }
        if midnight && reading.side != Side::Before {
            self.running.see(reading);
        }
    }
    fn has_seen_enough(&self, midnight: u32) -> bool {
        self.ripening.all_are_settled(midnight)
    }
    fn happened(&mut self, _: &Event, litres: R, before: &Reading<R>, after: &Reading<R>) {
        self.running.happened(litres, before, after);
    }
}
