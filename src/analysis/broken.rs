//! Which running limits were broken, in one tank or in several side by side; how badly is said elsewhere.

use crate::base::real::Real;
use crate::engine::result::Reading;

use super::jumps;
use super::limits::Limits;

/// A running limit: what a tank with animals must not leave. It never moves the ready day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Running {
    /// Lowest oxygen.
    Oxygen,
    /// Highest carbon dioxide.
    Co2,
    /// Change of temperature at a water change.
    TemperatureJump,
    /// Change of pH at a water change.
    PhJump,
    /// Nitrate with shrimp.
    ShrimpNitrate,
}

impl Running {
    /// All of them, in the order in which findings are printed.
    pub const ALL: [Running; 5] = [
        Running::Oxygen,
        Running::Co2,
        Running::TemperatureJump,
        Running::PhJump,
        Running::ShrimpNitrate,
    ];
    /// Its key in `[limits]`.
    pub fn key(self) -> &'static str {
        match self {
            Running::Oxygen => "oxygen",
            Running::Co2 => "co2",
            Running::TemperatureJump => "temperature_jump",
            Running::PhJump => "ph_jump",
            Running::ShrimpNitrate => "shrimp_nitrate",
        }
    }
}

/// Running limits that were broken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Broken([bool; Running::ALL.len()]);

impl Broken {
    /// Whether this one was.
    pub fn has(self, limit: Running) -> bool {
        self.0[limit as usize]
    }
    /// Those that were, in order.
    pub fn each(self) -> impl Iterator<Item = Running> {
        Running::ALL
            .into_iter()
            .filter(move |limit| self.has(*limit))
    }
    /// Those of either.
    #[must_use]
    pub fn and(self, other: Broken) -> Broken {
        Broken(std::array::from_fn(|at| self.0[at] || other.0[at]))
    }
}

/// Watches the running limits.
#[derive(Debug, Clone)]
pub struct RunningWatch<R = f64> {
    limits: Limits,
    /// Minute from which there are shrimp, in each lane.
    shrimp_from: R,
    /// 1 for each limit that was broken, else 0.
    broken: [R; Running::ALL.len()],
}

impl<R: Real> RunningWatch<R> {
    /// Nothing broken yet.
    pub fn new(limits: &Limits, shrimp_from: R) -> Self {
        RunningWatch {
            limits: *limits,
            shrimp_from,
            broken: [R::zero(); Running::ALL.len()],
        }
    }
    /// Sees the tanks.
    #[inline(always)]
    pub fn see(&mut self, reading: &Reading<R>) {
        let limits = self.limits;
        let nitrate = R::pick(
            R::of(f64::from(reading.minute)).below(self.shrimp_from),
            R::zero(),
            reading.nitrate_mg_n_per_l,
        );
        self.note(
            Running::Oxygen,
            reading.oxygen_mg_per_l.below(R::of(limits.oxygen.value)),
        );
        self.note(
            Running::Co2,
            R::of(limits.co2.value).below(reading.co2_mg_per_l),
        );
        self.note(
            Running::ShrimpNitrate,
            R::of(limits.shrimp_nitrate.value).below(nitrate),
        );
    }
    /// Sees an event; only water changes take out water.
    pub fn happened(&mut self, litres: R, before: &Reading<R>, after: &Reading<R>) {
        let changed = R::pick(R::zero().below(litres), R::one(), R::zero());
        let jump = |value: fn(&Reading<R>) -> R| jumps::size(value(before), value(after)) * changed;
        let (warmth, ph) = (jump(|r| r.temperature_c), jump(|r| r.ph));
        let limits = self.limits;
        self.note(
            Running::TemperatureJump,
            R::of(limits.temperature_jump.value).below(warmth),
        );
        self.note(Running::PhJump, R::of(limits.ph_jump.value).below(ph));
    }
    #[inline(always)]
    fn note(&mut self, limit: Running, broken: R::Mask) {
        let noted = &mut self.broken[limit as usize];
        *noted = R::pick(broken, R::one(), *noted);
    }
    /// What was broken in one lane.
    pub fn lane(&self, lane: usize) -> Broken {
        Broken(self.broken.map(|noted| noted.lane(lane) > 0.0))
    }
    /// What was broken so far; from here on anew.
    pub fn take(&mut self) -> [R; Running::ALL.len()] {
        std::mem::replace(&mut self.broken, [R::zero(); Running::ALL.len()])
    }
}

/// What was broken in one lane of what [`RunningWatch::take`] gave.
pub fn taken<R: Real>(broken: &[R; Running::ALL.len()], lane: usize) -> Broken {
    Broken(broken.map(|noted| noted.lane(lane) > 0.0))
}
