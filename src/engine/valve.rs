//! The gas valve: as planned, or tuned on some days so that the day's highest CO2 is the target.
//!
//! Tuning replays a day from its midnight with other settings, as a keeper would adjust from day to
//! day. Between tuning days the valve stays put, whatever the tank does.

use crate::base::clock::{DAY, HOUR, TimeOfDay, Window};
use crate::model::pool::Pool;

use super::error::RunError;
use super::event::Event;
use super::input::{GasHours, GasPlan, ModelInput, TimerLine};
use super::notice::Notice;
use super::result::{Reading, Side, Tuning};
use super::simulation::{Simulation, Watcher};
use super::timers::line_on;

/// Most trials of one tuning.
const TRIALS: u32 = 8;
/// How near the target the day's highest must come, mg/L.
const NEAR_MG_PER_L: f64 = 0.2;
/// Share of the target wanted at lights-on when the start is found.
const AT_LIGHTS_ON: f64 = 0.9;
/// Gas ends this long before lights-off when its hours are found (common practice, no source).
const BEFORE_LIGHTS_OFF: u32 = HOUR;
/// Lead before lights-on when no start gives enough (common practice, no source).
const USUAL_LEAD: u32 = 2 * HOUR;
/// Starts are tried in steps of this many minutes.
const START_STEP: u32 = 5;
/// First guess of the gas, mg/h per litre of water (6 mg/h/L keeps 30 mg/L over a ripple).
const FIRST_GUESS_MG_PER_H_AND_L: f64 = 6.0;

/// The valve with what has been set on it.
pub struct Valve<'a> {
    input: &'a ModelInput,
    tunings: Vec<Tuning>,
    setting: Option<Setting>,
}

#[derive(Debug, Clone, Copy)]
struct Setting {
    gas_mg_per_h: f64,
    lead_minutes: u32,
}

/// What one trial of a day gave.
#[derive(Debug, Clone, Copy)]
struct Trial {
    gas_mg_per_h: f64,
    highest: f64,
    at_lights_on: Option<f64>,
}

impl<'a> Valve<'a> {
    /// The valve of a plan, not yet set.
    pub fn new(input: &'a ModelInput) -> Self {
        Valve {
            input,
            tunings: Vec::new(),
            setting: None,
        }
    }

    /// The tunings made.
    pub fn into_tunings(self) -> Vec<Tuning> {
        self.tunings
    }

    /// The gas of a day, tuned first if the plan says so. The tank stands at the day's beginning.
    ///
    /// # Errors
    /// Those of a run.
    pub fn set_for(
        &mut self,
        day: u32,
        tank: &Simulation<'_>,
        notices: &mut Vec<Notice>,
    ) -> Result<Option<TimerLine>, RunError> {
        match &self.input.gas {
            GasPlan::None => Ok(None),
            GasPlan::Rate { lines, .. } => Ok(line_on(lines, day).copied()),
            GasPlan::Hold {
                target_mg_per_l,
                tuned_on,
                hours,
            } => {
                if self.window(hours, day, USUAL_LEAD) == Window::NEVER {
                    return Ok(None);
                }
                if self.setting.is_none() || tuned_on.contains(&day) {
                    self.tune(day, *target_mg_per_l, hours, tank, notices)?;
                }
                let setting = self.setting.unwrap_or(Setting {
                    gas_mg_per_h: 0.0,
                    lead_minutes: USUAL_LEAD,
                });
                Ok(Some(self.line(hours, day, &setting)))
            }
        }
    }

    fn line(&self, hours: &GasHours, day: u32, setting: &Setting) -> TimerLine {
        TimerLine {
            from_day: day,
            window: self.window(hours, day, setting.lead_minutes),
            value: setting.gas_mg_per_h,
        }
    }

    fn light(&self, day: u32) -> Window {
        line_on(&self.input.light, day)
            .filter(|line| line.value > 0.0)
            .map_or(Window::NEVER, |line| line.window)
    }

    /// The hours of the gas on a day, with a lead before lights-on where they are found.
    fn window(&self, hours: &GasHours, day: u32, lead_minutes: u32) -> Window {
        match hours {
            GasHours::Given(lines) => line_on(lines, day).map_or(Window::NEVER, |line| line.window),
            GasHours::Found { from_day } => {
                let light = self.light(day);
                if day < *from_day || light == Window::NEVER || light.minutes() <= BEFORE_LIGHTS_OFF
                {
                    return Window::NEVER;
                }
                let off = (light.off.0 + DAY - BEFORE_LIGHTS_OFF) % DAY;
                Window {
                    on: TimeOfDay(light.on.0.saturating_sub(lead_minutes)),
                    off: TimeOfDay(off),
                }
            }
        }
    }

    fn tune(
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
        self.setting = Some(Setting {
            gas_mg_per_h: trial.gas_mg_per_h,
            lead_minutes,
        });
        self.tunings.push(Tuning {
            day,
            window: self.window(hours, day, lead_minutes),
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
        let mut watch = HighestCo2 {
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

/// Watches a day for its highest carbon dioxide and that at lights-on.
struct HighestCo2 {
    highest: f64,
    lights_on: Option<u32>,
    at_lights_on: Option<f64>,
}

impl Watcher for HighestCo2 {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, reading: &Reading, _: &Simulation<'_>) {
        self.highest = self.highest.max(reading.co2_mg_per_l);
        if Some(reading.minute) == self.lights_on {
            self.at_lights_on = Some(reading.co2_mg_per_l);
        }
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}
