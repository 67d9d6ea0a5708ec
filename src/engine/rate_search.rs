//! The search for the gas whose day's highest CO2 is the target: by false position.

use super::trial::Trial;
use super::tuning::NEAR_MG_PER_L;

/// Most trials of one search.
const TRIALS: u32 = 8;

/// A search in one tank.
pub(super) struct RateSearch {
    target: f64,
    low: Trial,
    high: Option<Trial>,
    best: Option<Trial>,
    next: f64,
    trials: u32,
    done: bool,
}

impl RateSearch {
    /// Begins at a guess. Until a trial lies below the target, the lower end is a guess too: no gas,
    /// and what the indicator shows.
    pub(super) fn new(wanted: bool, target: f64, shown: f64, guess: f64) -> Self {
        RateSearch {
            target,
            low: Trial {
                gas_mg_per_h: 0.0,
                highest: shown.min(0.5 * target),
                at_lights_on: None,
            },
            high: None,
            best: None,
            next: guess,
            trials: 0,
            done: !wanted,
        }
    }
    /// Whether another day is to be tried.
    pub(super) fn wants_more(&self) -> bool {
        !self.done
    }
    /// The gas to try, mg/h.
    pub(super) fn next(&self) -> f64 {
        self.next
    }
    /// Learns what a trial gave.
    pub(super) fn learn(&mut self, trial: Trial) {
        self.trials += 1;
        let off = |trial: &Trial| (trial.highest - self.target).abs();
        if self.best.is_none_or(|best| off(&trial) < off(&best)) {
            self.best = Some(trial);
        }
        if off(&trial) <= 0.5 * NEAR_MG_PER_L {
            self.best = Some(trial);
            self.done = true;
            return;
        }
        if trial.highest < self.target {
            self.low = trial;
        } else {
            self.high = Some(trial);
        }
        self.next = between(&self.low, self.high.as_ref(), self.target);
        self.done = self.trials == TRIALS;
    }
    /// The best trial, and how many there were.
    pub(super) fn found(&self) -> (Trial, u32) {
        (self.best.unwrap_or(self.low), self.trials)
    }
}

/// The next gas to try: on the line through the two nearest trials, or along the last one's ray.
fn between(low: &Trial, high: Option<&Trial>, target: f64) -> f64 {
    match high {
        Some(high) => {
            let slope = (high.gas_mg_per_h - low.gas_mg_per_h) / (high.highest - low.highest);
            low.gas_mg_per_h + slope * (target - low.highest)
        }
        None => low.gas_mg_per_h.max(1.0) * (1.05 * target / low.highest.max(0.1)).min(8.0),
    }
}
