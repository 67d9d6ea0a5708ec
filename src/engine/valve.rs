//! The gas valves: as planned, or tuned on some days so that the day's highest CO2 is the target.
//!
//! Tuning replays a day from its midnight with other settings, as a keeper would adjust from day to
//! day. Between tuning days a valve stays put, whatever the tank does. A first day cut
//! short, because the tank was filled after the gas came on, is followed by a tuning on the next.
//! Tanks side by side have a valve each, and each is tuned as it would be alone.

use crate::base::clock::{DAY, HOUR, TimeOfDay, Window};
use crate::base::real::Real;

use super::error::RunError;
use super::input::{GasHours, GasPlan, ModelInput, TimerLine};
use super::notice::Notice;
use super::plan::Plan;
use super::result::Tuning;
use super::simulation::Simulation;
use super::timers::line_on;
use super::watcher::Watcher;

/// Gas ends this long before lights-off when its hours are found (common practice, no source).
const BEFORE_LIGHTS_OFF: u32 = HOUR;
/// Lead before lights-on when no start gives enough (common practice, no source).
pub(super) const USUAL_LEAD: u32 = 2 * HOUR;
/// Starts are tried in steps of this many minutes before lights-on.
pub(super) const START_STEP: u32 = 30;

/// The valves of tanks side by side with what has been set on them.
pub struct Valves<'a> {
    pub(super) lanes: Vec<Valve<'a>>,
}

/// The valve of one tank.
pub struct Valve<'a> {
    pub(super) input: &'a ModelInput,
    /// The tunings made.
    pub tunings: Vec<Tuning>,
    /// What was noticed while tuning.
    pub notices: Vec<Notice>,
    pub(super) setting: Option<Setting>,
    /// The tank was filled after the gas came on: what suits that day is too much for a whole one.
    pub(super) first_day_was_short: bool,
}

/// What a valve must remember to go on from another day.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Standing {
    setting: Option<Setting>,
    first_day_was_short: bool,
}

/// What stands on the valve and its timer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Setting {
    pub(super) gas_mg_per_h: f64,
    pub(super) lead_minutes: u32,
    /// How much higher the day's highest CO2 comes with more gas, as the last tuning found.
    pub(super) mg_per_l_and_mg_per_h: Option<f64>,
}

impl<'a> Valves<'a> {
    /// The valves of a plan, not yet set.
    pub fn new<R: Real>(plan: &'a Plan<R>) -> Self {
        let valve = |input: &'a ModelInput| Valve {
            input,
            tunings: Vec::new(),
            notices: Vec::new(),
            setting: None,
            first_day_was_short: false,
        };
        Valves {
            lanes: plan.lanes.iter().map(|lane| valve(&lane.input)).collect(),
        }
    }

    /// The valves of a plan as they stood on tanks on the way.
    pub(super) fn as_on<R: Real>(tanks: &Simulation<'a, R>) -> Self {
        let mut valves = Valves::new(tanks.plan);
        for (valve, stood) in valves.lanes.iter_mut().zip(&tanks.keeping.valves) {
            valve.setting = stood.setting;
            valve.first_day_was_short = stood.first_day_was_short;
        }
        valves
    }

    /// The valves, one per tank.
    pub fn into_lanes(self) -> Vec<Valve<'a>> {
        self.lanes
    }

    /// Takes tanks to a minute, the gas set every day; or to the midnight from which on the watcher has seen enough.
    ///
    /// # Errors
    /// Those of a run.
    pub fn take<R: Real>(
        &mut self,
        tanks: &mut Simulation<'_, R>,
        until: u32,
        watcher: &mut impl Watcher<R>,
    ) -> Result<(), RunError> {
        while tanks.minute < until && !watcher.has_seen_enough(tanks.minute) {
            let day = tanks.minute / DAY;
            tanks.keeping.gas = self.set_for(day, tanks)?;
            tanks.keeping.valves = self.lanes.iter().map(Valve::standing).collect();
            tanks.advance(until.min((day + 1) * DAY), watcher)?;
        }
        Ok(())
    }

    /// The gas of a day in each tank, tuned first if the plan says so. The tanks stand at the day's
    /// beginning.
    ///
    /// # Errors
    /// Those of a run.
    pub fn set_for<R: Real>(
        &mut self,
        day: u32,
        tanks: &Simulation<'_, R>,
    ) -> Result<Vec<Option<TimerLine>>, RunError> {
        let asks: Vec<bool> = (self.lanes.iter_mut())
            .map(|valve| valve.asks_for_tuning(day))
            .collect();
        if asks.contains(&true) {
            self.tune(day, &asks, tanks)?;
        }
        Ok(self.lanes.iter().map(|valve| valve.line(day)).collect())
    }
}

impl Valve<'_> {
    fn standing(&self) -> Standing {
        Standing {
            setting: self.setting,
            first_day_was_short: self.first_day_was_short,
        }
    }

    /// Whether the valve is to be tuned on a day.
    fn asks_for_tuning(&mut self, day: u32) -> bool {
        let GasPlan::Hold { tuned_on, .. } = &self.input.gas else {
            return false;
        };
        if self.window(day, USUAL_LEAD) == Window::NEVER {
            return false;
        }
        let again = std::mem::take(&mut self.first_day_was_short);
        self.setting.is_none() || tuned_on.contains(&day) || again
    }

    /// The gas of a day as planned, or as set.
    fn line(&self, day: u32) -> Option<TimerLine> {
        match &self.input.gas {
            GasPlan::None => None,
            GasPlan::Rate { lines, .. } => line_on(lines, day).copied(),
            GasPlan::Hold { .. } => {
                let setting = self.setting?;
                let window = self.window(day, setting.lead_minutes);
                (window != Window::NEVER).then_some(TimerLine {
                    from_day: day,
                    window,
                    value: setting.gas_mg_per_h,
                })
            }
        }
    }

    /// The target of tuning, mg/L.
    pub(super) fn target(&self) -> f64 {
        match &self.input.gas {
            GasPlan::Hold {
                target_mg_per_l, ..
            } => *target_mg_per_l,
            _ => 0.0,
        }
    }

    /// Whether the hours of the gas are found, not given.
    pub(super) fn hours_are_found(&self) -> bool {
        found_from(&self.input.gas).is_some()
    }

    /// The hours of the light on a day.
    pub(super) fn light(&self, day: u32) -> Window {
        light(self.input, day)
    }

    /// The hours of the gas on a day, with a lead before lights-on where they are found.
    pub(super) fn window(&self, day: u32, lead_minutes: u32) -> Window {
        let GasPlan::Hold { hours, .. } = &self.input.gas else {
            return Window::NEVER;
        };
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

fn light(input: &ModelInput, day: u32) -> Window {
    line_on(&input.light, day)
        .filter(|line| line.value > 0.0)
        .map_or(Window::NEVER, |line| line.window)
}

fn found_from(gas: &GasPlan) -> Option<u32> {
    match gas {
        GasPlan::Hold {
            hours: GasHours::Found { from_day },
            ..
        } => Some(*from_day),
        _ => None,
    }
}

/// The minutes of a day at which gas might come on where its start is found. Every step ends at
/// each of them, whichever was chosen, so that tanks side by side step alike.
pub(super) fn possible_starts(input: &ModelInput, day: u32) -> Vec<u32> {
    let light = light(input, day);
    match found_from(&input.gas) {
        Some(from_day) if day >= from_day && light != Window::NEVER => {
            let starts = (0..=light.on.0).rev().step_by(START_STEP as usize);
            starts.map(|minute| day * DAY + minute).collect()
        }
        _ => Vec::new(),
    }
}
