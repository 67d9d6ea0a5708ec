//! The gas valve: as planned, or tuned on some days so that the day's highest CO2 is the target.
//!
//! Tuning replays a day from its midnight with other settings, as a keeper would adjust from day to
//! day. Between tuning days the valve stays put, whatever the tank does. A first day cut
//! short, because the tank was filled after the gas came on, is followed by a tuning on the next.

use crate::base::clock::{DAY, HOUR, TimeOfDay, Window};

use super::error::RunError;
use super::input::{GasHours, GasPlan, ModelInput, TimerLine};
use super::notice::Notice;
use super::result::Tuning;
use super::simulation::Simulation;
use super::timers::line_on;

/// Gas ends this long before lights-off when its hours are found (common practice, no source).
const BEFORE_LIGHTS_OFF: u32 = HOUR;
/// Lead before lights-on when no start gives enough (common practice, no source).
pub(super) const USUAL_LEAD: u32 = 2 * HOUR;

/// The valve with what has been set on it.
pub struct Valve<'a> {
    input: &'a ModelInput,
    pub(super) tunings: Vec<Tuning>,
    pub(super) setting: Option<Setting>,
    /// The tank was filled after the gas came on: what suits that day is too much for a whole one.
    pub(super) first_day_was_short: bool,
}

/// What stands on the valve and its timer.
#[derive(Debug, Clone, Copy)]
pub(super) struct Setting {
    pub(super) gas_mg_per_h: f64,
    pub(super) lead_minutes: u32,
}

impl<'a> Valve<'a> {
    /// The valve of a plan, not yet set.
    pub fn new(input: &'a ModelInput) -> Self {
        Valve {
            input,
            tunings: Vec::new(),
            setting: None,
            first_day_was_short: false,
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
                let again = std::mem::take(&mut self.first_day_was_short);
                if self.setting.is_none() || tuned_on.contains(&day) || again {
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

    pub(super) fn light(&self, day: u32) -> Window {
        line_on(&self.input.light, day)
            .filter(|line| line.value > 0.0)
            .map_or(Window::NEVER, |line| line.window)
    }

    /// The hours of the gas on a day, with a lead before lights-on where they are found.
    pub(super) fn window(&self, hours: &GasHours, day: u32, lead_minutes: u32) -> Window {
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
}
