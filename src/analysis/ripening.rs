//! The ripening limits: what breaks them, and from which day on they hold to the end; in one tank or in
//! several side by side.

use std::ops::Range;

use crate::base::clock::{self, DAY};
use crate::base::real::Real;
use crate::engine::result::{Reading, Side};

use super::limits::Limits;
use super::stocking::DAYS_WITH_ANIMALS;

/// A ripening limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ripening {
    /// Nitrite.
    Nitrite,
    /// Total ammonia.
    TotalAmmonia,
    /// Free ammonia.
    FreeAmmonia,
}

impl Ripening {
    /// All of them; where two were last broken at the same time, the first is named.
    pub const ALL: [Ripening; 3] = [
        Ripening::Nitrite,
        Ripening::TotalAmmonia,
        Ripening::FreeAmmonia,
    ];
    /// Where a reading breaks the limit.
    #[inline(always)]
    pub fn broken<R: Real>(self, limits: &Limits, r: &Reading<R>) -> R::Mask {
        match self {
            Ripening::Nitrite => limits
                .nitrite_with(r.chloride_mg_per_l)
                .below(r.nitrite_mg_n_per_l),
            Ripening::TotalAmmonia => R::of(limits.total_ammonia.value).below(r.tan_mg_n_per_l),
            Ripening::FreeAmmonia => {
                R::of(limits.free_ammonia.value).below(r.free_ammonia_mg_n_per_l)
            }
        }
    }
}

/// One of the two steps of nitrification.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OxidationStep {
    /// Ammonia to nitrite.
    Ammonia,
    /// Nitrite to nitrate.
    Nitrite,
}

impl OxidationStep {
    /// Both, in the order in which nitrogen goes through them.
    pub const BOTH: [OxidationStep; 2] = [OxidationStep::Ammonia, OxidationStep::Nitrite];
    /// What the microbes could oxidise in this step, mg N/day.
    #[inline(always)]
    pub fn capacity<R: Real>(self, reading: &Reading<R>) -> R {
        match self {
            OxidationStep::Ammonia => reading.ammonia_capacity_mg_n_per_day,
            OxidationStep::Nitrite => reading.nitrite_capacity_mg_n_per_day,
        }
    }
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            OxidationStep::Ammonia => "ammonia to nitrite",
            OxidationStep::Nitrite => "nitrite to nitrate",
        }
    }
}

/// From which day on each rule holds without animals: to the end of the run, and for the two weeks that animals are to
/// be in the tank.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Held {
    /// The first whole day of the run.
    pub first_day: u32,
    /// First whole day from whose midnight each ripening limit holds, in the order of [`Ripening::ALL`].
    pub limits: [u32; Ripening::ALL.len()],
    /// First whole day from whose midnight each step can oxidise the planned feed.
    pub able: [u32; OxidationStep::BOTH.len()],
}

impl Held {
    /// The day from which all limits hold, and which was the last.
    pub fn quiet_from(&self) -> (u32, Ripening) {
        latest(self.limits.iter().copied().zip(Ripening::ALL))
    }
    /// The day from which both steps are able, and which was the last.
    pub fn able_from(&self) -> (u32, OxidationStep) {
        latest(self.able.iter().copied().zip(OxidationStep::BOTH))
    }
    /// The first day from whose midnight everything holds, if it is one of the run.
    pub fn candidate(&self, last_day: u32) -> Option<u32> {
        let day = self.quiet_from().0.max(self.able_from().0);
        (day <= last_day).then_some(day)
    }
}

fn latest<T>(days: impl Iterator<Item = (u32, T)>) -> (u32, T) {
    days.reduce(|best, next| if next.0 > best.0 { next } else { best })
        .expect("there is always a rule")
}

/// Watches tanks without animals for [`Held`]. Once the run has ended and everything has held for two weeks a tank is
/// settled: what comes later no longer counts.
#[derive(Debug, Clone)]
pub struct RipeningWatch<R = f64> {
    limits: Limits,
    needed_mg_n_per_day: R,
    first_day: u32,
    end_days: f64,
    held_from: [R; Ripening::ALL.len()],
    able_from: [R; OxidationStep::BOTH.len()],
}

impl<R: Real> RipeningWatch<R> {
    /// Watches tanks from the minute of filling to the end of the run and beyond, which must be able to oxidise so
    /// much.
    pub fn new(limits: &Limits, run: Range<u32>, needed_mg_n_per_day: R) -> Self {
        let first_day = run.start.div_ceil(DAY);
        let from = R::of(f64::from(first_day));
        RipeningWatch {
            limits: *limits,
            needed_mg_n_per_day,
            first_day,
            end_days: clock::days(run.end),
            held_from: [from; Ripening::ALL.len()],
            able_from: [from; OxidationStep::BOTH.len()],
        }
    }
    /// Sees the tanks.
    #[inline(always)]
    pub fn see(&mut self, r: &Reading<R>) {
        let after = R::of(f64::from(first_day_after(r.minute, r.side)));
        let open = self.open(clock::days(r.minute));
        for (from, limit) in self.held_from.iter_mut().zip(Ripening::ALL) {
            let broken = R::both(open, limit.broken(&self.limits, r));
            *from = R::pick(broken, after, *from);
        }
        for (from, step) in self.able_from.iter_mut().zip(OxidationStep::BOTH) {
            let short = step.capacity(r).below(self.needed_mg_n_per_day);
            *from = R::pick(R::both(open, short), after, *from);
        }
    }
    /// Whether all tanks are settled at a minute.
    pub fn all_are_settled(&self, minute: u32) -> bool {
        !R::any(self.open(clock::days(minute)))
    }
    /// Whether the tank of one lane is settled so many days after midnight of day 0.
    pub fn is_settled(&self, days: f64, lane: usize) -> bool {
        let open = R::pick(self.open(days), R::one(), R::zero());
        open.lane(lane) == 0.0
    }
    /// The tanks that are not settled so many days after midnight of day 0.
    #[inline(always)]
    fn open(&self, days: f64) -> R::Mask {
        if days < self.end_days {
            return R::zero().below(R::one());
        }
        let [first, rest @ ..] = &self.held_from;
        let all = rest.iter().chain(&self.able_from);
        let candidate = all.fold(*first, |latest, from| latest.most(*from));
        R::of(days).below(candidate + R::of(f64::from(DAYS_WITH_ANIMALS)))
    }
    /// What held in one lane.
    pub fn lane(&self, lane: usize) -> Held {
        let day = |from: R| from.lane(lane) as u32;
        Held {
            first_day: self.first_day,
            limits: self.held_from.map(day),
            able: self.able_from.map(day),
        }
    }
}

/// The first day that opens after a reading. What stands just before a midnight still belongs to the day that
/// ends there.
fn first_day_after(minute: u32, side: Side) -> u32 {
    if minute.is_multiple_of(DAY) && side == Side::Before {
        minute / DAY
    } else {
        minute / DAY + 1
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;

    /// The first day from which all holds in a run of eight weeks whose nitrite is too high on some days.
    fn ready_day(too_high: &[u32]) -> Option<u32> {
        let calm = Example::default().run().readings.pop().unwrap();
        let mut watch = RipeningWatch::new(&Limits::default(), 0..56 * DAY, 0.0);
        for hour in 0..70 * 24 {
            let minute = hour * 60;
            let is_too_high = too_high.contains(&(minute / DAY));
            let nitrite_mg_n_per_l = if is_too_high { 1.0 } else { 0.0 };
            watch.see(&Reading {
                minute,
                side: Side::Plain,
                nitrite_mg_n_per_l,
                ..calm
            });
        }
        watch.lane(0).candidate(55)
    }

    #[test]
    fn limits_must_hold_to_the_end_and_for_two_weeks_at_least() {
        assert_eq!(ready_day(&[20]), Some(21));
        assert_eq!(ready_day(&[20, 55]), None, "broken on the last day");
        assert_eq!(ready_day(&[20, 60]), Some(21), "broken after the end");
        assert_eq!(ready_day(&[45, 60]), Some(46), "two weeks were over");
        assert_eq!(ready_day(&[46, 60]), None, "on the last of two weeks");
    }
}
