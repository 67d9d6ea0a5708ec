//! Tuning the valve: a day is replayed with other settings until its highest CO2 is the target.

use crate::base::clock::{DAY, Window};
use crate::model::pool::Pool;

use super::error::RunError;
use super::event::Event;
use super::input::{GasHours, TimerLine};
use super::notice::Notice;
use super::result::{Reading, Side, Tuning};
use super::simulation::{Simulation, Watcher};
use super::valve::{Setting, USUAL_LEAD, Valve};

/// Most trials of one tuning.
const TRIALS: u32 = 8;
/// How near the target the day's highest must come, mg/L.
const NEAR_MG_PER_L: f64 = 0.2;
/// Share of the target wanted at lights-on when the start is found.
const AT_LIGHTS_ON: f64 = 0.9;
/// Starts are tried in steps of this many minutes.
const START_STEP: u32 = 5;
/// First guess of the gas, mg/h per litre of water (6 mg/h/L keeps 30 mg/L over a ripple).
const FIRST_GUESS_MG_PER_H_AND_L: f64 = 6.0;

/// What one trial of a day gave.
#[derive(Debug, Clone, Copy)]
struct Trial {
    gas_mg_per_h: f64,
    highest: f64,
    at_lights_on: Option<f64>,
}

impl Valve<'_> {
    /// Tunes the valve on a day at whose beginning the tank stands, and notes what came of it.
    ///
    /// # Errors
    /// Those of a run.
    pub(super) fn tune(
        &mut self,
        day: u32,
        target: f64,
        hours: &GasHours,
        tank: &Simulation<'_>,
        notices: &mut Vec<Notice>,
    ) -> Result<(), RunError> {
        let (lead_minutes, start_found) = match hours {
            GasHours::Given(_) => (USUAL_LEAD, true),
            GasHours::Found { .. } => self.latest_lead(day, target, hours, tank, notices)?,
        };
        let (trial, trials) = self.reach(day, target, hours, lead_minutes, tank)?;
        let reached = (trial.highest - target).abs() <= NEAR_MG_PER_L;
        if !reached {
            notices.push(Notice::TargetOutOfReach {
                day,
                target,
                nearest: trial.highest,
            });
        }
        let window = self.window(hours, day, lead_minutes);
        self.first_day_was_short = self.setting.is_none() && tank.minute > day * DAY + window.on.0;
        self.setting = Some(Setting {
            gas_mg_per_h: trial.gas_mg_per_h,
            lead_minutes,
        });
        self.tunings.push(Tuning {
            day,
            window,
            gas_mg_per_h: trial.gas_mg_per_h,
            highest_mg_per_l: trial.highest,
            at_lights_on_mg_per_l: trial.at_lights_on,
            trials,
            reached,
            start_found,
        });
        Ok(())
    }

    /// The shortest lead that gives the wanted share of the target at lights-on, by halving.
    fn latest_lead(
        &self,
        day: u32,
        target: f64,
        hours: &GasHours,
        tank: &Simulation<'_>,
        notices: &mut Vec<Notice>,
    ) -> Result<(u32, bool), RunError> {
        let lights_on = self.light(day).on.0;
        if tank.minute > day * DAY + lights_on {
            return Ok((USUAL_LEAD, true)); // filled after lights-on: judged on the next day
        }
        let at = |lead: u32| -> Result<f64, RunError> {
            Ok(self
                .reach(day, target, hours, lead, tank)?
                .0
                .at_lights_on
                .unwrap_or(0.0))
        };
        let earliest = lights_on.saturating_sub(tank.minute.saturating_sub(day * DAY)) / START_STEP
            * START_STEP;
        let best = at(earliest)?;
        if best < AT_LIGHTS_ON * target {
            notices.push(Notice::NoStartReaches {
                day,
                at_lights_on: best,
            });
            return Ok((USUAL_LEAD.min(earliest), false));
        }
        let (mut short, mut long) = (0, earliest / START_STEP);
        if at(0)? >= AT_LIGHTS_ON * target {
            return Ok((0, true));
        }
        while long - short > 1 {
            let middle = short.midpoint(long);
            if at(middle * START_STEP)? >= AT_LIGHTS_ON * target {
                long = middle
            } else {
                short = middle
            }
        }
        Ok((long * START_STEP, true))
    }

    /// Finds the gas whose day's highest is the target: by false position, at most [`TRIALS`] days.
    fn reach(
        &self,
        day: u32,
        target: f64,
        hours: &GasHours,
        lead_minutes: u32,
        tank: &Simulation<'_>,
    ) -> Result<(Trial, u32), RunError> {
        let window = self.window(hours, day, lead_minutes);
        let base = tank.state[Pool::Indicator];
        let guess = self
            .setting
            .map_or(FIRST_GUESS_MG_PER_H_AND_L * tank.state[Pool::Volume], |s| {
                s.gas_mg_per_h
            });
        // until a trial lies below the target, the lower end is a guess: no gas, what the indicator shows
        let mut low = Trial {
            gas_mg_per_h: 0.0,
            highest: base.min(0.5 * target),
            at_lights_on: None,
        };
        let mut high: Option<Trial> = None;
        let mut best: Option<Trial> = None;
        let mut next = guess;
        for count in 1..=TRIALS {
            let trial = self.try_day(day, window, next, tank)?;
            if best.is_none_or(|b| (trial.highest - target).abs() < (b.highest - target).abs()) {
                best = Some(trial);
            }
            if (trial.highest - target).abs() <= 0.5 * NEAR_MG_PER_L {
                return Ok((trial, count));
            }
            if trial.highest < target {
                low = trial
            } else {
                high = Some(trial)
            }
            next = between(&low, high.as_ref(), target);
        }
        let trial = best.unwrap_or(low);
        Ok((trial, TRIALS))
    }

    fn try_day(
        &self,
        day: u32,
        window: Window,
        gas: f64,
        tank: &Simulation<'_>,
    ) -> Result<Trial, RunError> {
        let mut copy = tank.clone();
        copy.keeping.gas = Some(TimerLine {
            from_day: day,
            window,
            value: gas,
        });
        let light = self.light(day);
        let lights_on = (light != Window::NEVER).then_some(day * DAY + light.on.0);
        let passes_midnight = window.on > window.off;
        let from = if passes_midnight {
            day * DAY
        } else {
            day * DAY + window.on.0
        };
        let mut watch = HighestCo2 {
            from,
            highest: 0.0,
            lights_on,
            at_lights_on: None,
        };
        copy.advance((day + 1) * DAY, &mut watch)?;
        copy.show(&mut watch);
        Ok(Trial {
            gas_mg_per_h: gas,
            highest: watch.highest,
            at_lights_on: watch.at_lights_on,
        })
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

/// Watches a day for its highest carbon dioxide from the gas coming on, and for that at lights-on.
/// What the night before left over is not the valve's doing: counted in, it would hide how little
/// or how much today's setting gives.
struct HighestCo2 {
    from: u32,
    highest: f64,
    lights_on: Option<u32>,
    at_lights_on: Option<f64>,
}

impl Watcher for HighestCo2 {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, reading: &Reading, _: &Simulation<'_>) {
        if reading.minute >= self.from {
            self.highest = self.highest.max(reading.co2_mg_per_l);
        }
        if Some(reading.minute) == self.lights_on {
            self.at_lights_on = Some(reading.co2_mg_per_l);
        }
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}
