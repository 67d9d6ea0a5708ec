//! The search for the gas whose day's highest CO2 is the target: by the secant through the last two trials.
//!
//! More gas gives more carbon dioxide, nearly in proportion. How much more hangs on the surface and the
//! depth, which change little from one tuning to the next: what the last one found is a good first slope.

use super::trial::Trial;
use super::tuning::NEAR_MG_PER_L;

/// Most trials of one search (a judgement: three do nearly always).
const TRIALS: u32 = 8;
/// Most that the gas is changed by from one trial to the next, as a factor (a judgement).
const MOST_AT_ONCE: f64 = 4.0;

/// What is known of a valve before a search.
#[derive(Debug, Clone, Copy)]
pub(super) struct Guess {
    pub(super) gas_mg_per_h: f64,
    /// How much higher the day's highest comes with more gas, where a search has been made before.
    pub(super) mg_per_l_and_mg_per_h: Option<f64>,
}

/// What a search has found.
#[derive(Debug, Clone, Copy)]
pub(super) struct Found {
    /// The trial that came nearest.
    pub(super) trial: Trial,
    /// How many there were.
    pub(super) trials: u32,
    /// How much higher the day's highest comes with more gas, if that could be told.
    pub(super) mg_per_l_and_mg_per_h: Option<f64>,
}

/// A search in one tank.
pub(super) struct RateSearch {
    target: f64,
    /// Below the target: at first no gas, and what the indicator shows.
    low: Trial,
    high: Option<Trial>,
    last: Option<Trial>,
    best: Option<Trial>,
    slope: Option<f64>,
    next: f64,
    trials: u32,
    done: bool,
}

impl RateSearch {
    /// Begins at a guess. Until a trial lies below the target, the lower end is a guess too: no gas,
    /// and what the indicator shows.
    pub(super) fn new(wanted: bool, target: f64, shown: f64, guess: Guess) -> Self {
        RateSearch {
            target,
            low: Trial {
                gas_mg_per_h: 0.0,
                highest: shown.min(0.5 * target),
                at_lights_on: None,
            },
            high: None,
            last: None,
            best: None,
            slope: guess.mg_per_l_and_mg_per_h,
            next: guess.gas_mg_per_h,
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
        self.slope = self.slope_by(&trial);
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
        self.last = Some(trial);
        self.next = self.after(&trial);
        self.done = self.trials == TRIALS;
    }

    /// The slope when a trial is known: through the last one and this; at first as was known before, or
    /// from the lower end.
    fn slope_by(&self, trial: &Trial) -> Option<f64> {
        let through = |other: &Trial| {
            let slope = (trial.highest - other.highest) / (trial.gas_mg_per_h - other.gas_mg_per_h);
            (slope > 0.0 && slope.is_finite()).then_some(slope)
        };
        match &self.last {
            Some(last) => through(last).or(self.slope),
            None => self.slope.or_else(|| through(&self.low)),
        }
    }

    /// The next gas to try: where the line reaches the target, but between what is known to be too little
    /// and too much.
    fn after(&self, trial: &Trial) -> f64 {
        let [least, most] =
            [1.0 / MOST_AT_ONCE, MOST_AT_ONCE].map(|most| most * trial.gas_mg_per_h);
        let next = match self.slope {
            Some(slope) => trial.gas_mg_per_h + (self.target - trial.highest) / slope,
            None => most,
        };
        let known = self.high.filter(|_| self.low.gas_mg_per_h > 0.0);
        match known {
            Some(high) if next <= self.low.gas_mg_per_h || next >= high.gas_mg_per_h => {
                let slope =
                    (high.gas_mg_per_h - self.low.gas_mg_per_h) / (high.highest - self.low.highest);
                self.low.gas_mg_per_h + slope * (self.target - self.low.highest)
            }
            _ => next.clamp(least, most),
        }
    }

    /// What came nearest.
    pub(super) fn found(&self) -> Found {
        Found {
            trial: self.best.unwrap_or(self.low),
            trials: self.trials,
            mg_per_l_and_mg_per_h: self.slope,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TARGET: f64 = 26.0;

    /// Searches in a tank of which the day's highest is known for every gas.
    fn search(highest: impl Fn(f64) -> f64, slope: Option<f64>) -> Found {
        let guess = Guess {
            gas_mg_per_h: 100.0,
            mg_per_l_and_mg_per_h: slope,
        };
        let mut search = RateSearch::new(true, TARGET, 5.0, guess);
        while search.wants_more() {
            let gas_mg_per_h = search.next();
            search.learn(Trial {
                gas_mg_per_h,
                highest: highest(gas_mg_per_h),
                at_lights_on: None,
            });
        }
        search.found()
    }

    #[test]
    fn a_tank_in_proportion_takes_two_trials_when_the_slope_is_known_and_three_when_not() {
        let tank = |gas: f64| 8.0 + 0.15 * gas;
        let known = search(tank, Some(0.15));
        assert_eq!(known.trials, 2);
        assert!((known.trial.gas_mg_per_h - 120.0).abs() < 1e-9);
        let unknown = search(tank, None);
        assert_eq!(unknown.trials, 3);
        let slope = unknown.mg_per_l_and_mg_per_h.expect("two trials tell it");
        assert!((slope - 0.15).abs() < 1e-9, "{slope}");
    }

    #[test]
    fn a_crooked_tank_is_found_whatever_slope_was_known() {
        // plants take most of a little gas, little of much
        let tank = |gas: f64| 3.0 + 0.2 * gas * gas / (gas + 60.0);
        for slope in [None, Some(0.01), Some(0.15), Some(2.0)] {
            let found = search(tank, slope);
            let off = (found.trial.highest - TARGET).abs();
            assert!(off <= 0.5 * NEAR_MG_PER_L, "off by {off} from {slope:?}");
        }
    }

    #[test]
    fn out_of_reach_ends_with_the_nearest() {
        let found = search(|gas| 30.0 + 0.1 * gas, None);
        assert_eq!(found.trials, TRIALS);
        // a quarter each of six times, once two trials have told the slope
        let least = 100.0 / 4096.0;
        assert!(found.trial.gas_mg_per_h <= least, "{found:?}");
    }
}
