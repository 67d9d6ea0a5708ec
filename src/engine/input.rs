//! All a run needs, already checked: the only door into the engine.

use crate::base::clock::{DAY, Window};
use crate::model::composition::Composition;
use crate::model::parameter_set::ParameterSet;
use crate::model::setup::{StandPlan, Tank};

use super::event::{Event, EventKind};

/// A tank, its room, its water and its plan.
#[derive(Debug, Clone)]
pub struct ModelInput {
    /// Minute of day 0 at which the tank is full.
    pub filled_at: u32,
    /// Number of the last day; the run ends at its closing midnight.
    pub last_day: u32,
    /// Days simulated past the end, so that the last weeks can be judged too.
    pub lookahead_days: u32,
    /// The step, minutes.
    pub step_minutes: u32,
    /// Dimensions of the tank.
    pub tank: Tank,
    /// The air around it.
    pub room: Room,
    /// Heating.
    pub heating: Heating,
    /// Water of the first filling, ready to use (blended, dechlorinated).
    pub fill: Composition,
    /// Water of every change, ready to use.
    pub refill: Composition,
    /// What replaces evaporated water.
    pub top_up: TopUp,
    /// Parameter values.
    pub parameters: ParameterSet,
    /// First films as a multiple of `XA0`, `XN0`, `XK0`.
    pub seed_level: f64,
    /// Days the soil stood moist before filling.
    pub dry_days: f64,
    /// Planted stands, in the order in which events name them.
    pub stands: Vec<StandPlan>,
    /// Light at the soil, µmol/m²/s.
    pub light: Vec<TimerLine>,
    /// Carbon dioxide.
    pub gas: GasPlan,
    /// Air through the stone, L/min.
    pub air: Vec<TimerLine>,
    /// Mains failures.
    pub power_cuts: Vec<PowerCut>,
    /// First and last day of spells in which animals are not fed.
    pub unfed: Vec<(u32, u32)>,
    /// Everything that happens at one instant, in any order.
    pub events: Vec<Event>,
}

impl ModelInput {
    /// The minute at which the judged run ends (closing midnight of the last day).
    pub fn end_minute(&self) -> u32 {
        (self.last_day + 1) * DAY
    }
    /// Day and share of every water change within the judged run.
    pub fn changes(&self) -> Vec<(u32, f64)> {
        let within = self
            .events
            .iter()
            .filter(|event| event.minute < self.end_minute());
        within
            .filter_map(|event| match event.kind {
                EventKind::Change { share } => Some((event.minute / DAY, share)),
                _ => None,
            })
            .collect()
    }
    /// On which day of the look-ahead a change of water is made again that is made on a day named alone, not by a
    /// rule: beyond the end somebody does as in the last days of the run. None for earlier days.
    pub fn again_beyond_the_end(&self, day: u32) -> Option<u32> {
        again_beyond(day, self.last_day, self.lookahead_days)
    }
    /// The minute at which the simulation stops, the look-ahead included.
    pub fn final_minute(&self) -> u32 {
        self.end_minute() + self.lookahead_days * DAY
    }
    /// The same plan without animals and their feed.
    pub fn without_animals(&self) -> ModelInput {
        let mut quiet = self.clone();
        quiet.events.retain(|event| !event.kind.is_about_animals());
        quiet
    }
    /// Whether the plan puts animals in.
    pub fn has_animals(&self) -> bool {
        self.events
            .iter()
            .any(|event| event.kind.is_about_animals())
    }
}

/// [`ModelInput::again_beyond_the_end`], where there is no input yet.
pub fn again_beyond(day: u32, last_day: u32, lookahead_days: u32) -> Option<u32> {
    let again = day + lookahead_days;
    (day <= last_day && again > last_day).then_some(again)
}

/// The air around the tank.
#[derive(Debug, Clone, Copy)]
pub struct Room {
    /// Air temperature, °C.
    pub temperature_c: f64,
    /// Relative humidity, 0 to 1.
    pub humidity_frac: f64,
}

/// The heater.
#[derive(Debug, Clone, Copy)]
pub struct Heating {
    /// Set point, °C; none without a heater.
    pub set_c: Option<f64>,
    /// Temperature of the water at filling, °C.
    pub start_c: f64,
}

/// What replaces evaporated water.
#[derive(Debug, Clone, Copy)]
pub enum TopUp {
    /// As much as evaporates, all the time, of this water at room temperature.
    Automatic(Composition),
    /// Nothing until the next water change.
    None,
}

/// One line of a timer's table: valid from midnight of a day until a later line takes over.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimerLine {
    /// First day of the line.
    pub from_day: u32,
    /// Daily window.
    pub window: Window,
    /// Value while on.
    pub value: f64,
}

/// How carbon dioxide is given.
#[derive(Debug, Clone)]
pub enum GasPlan {
    /// No gas.
    None,
    /// Gas leaving the cylinder at given rates, mg/h.
    Rate {
        /// Timer with rates.
        lines: Vec<TimerLine>,
        /// Concentration at which a controller closes the valve, mg/L.
        cut_off_mg_per_l: Option<f64>,
    },
    /// A valve tuned on some days so that the highest concentration of the day is the target.
    Hold {
        /// The target, mg/L.
        target_mg_per_l: f64,
        /// Days on which the valve is tuned; the first day with gas is added.
        tuned_on: Vec<u32>,
        /// Hours of the gas.
        hours: GasHours,
    },
}

/// The hours of the gas when the valve is tuned.
#[derive(Debug, Clone)]
pub enum GasHours {
    /// Given (the values of the lines are ignored).
    Given(Vec<TimerLine>),
    /// Found: gas ends this many minutes before lights-off and starts as late as still gives
    /// the stated share of the target at lights-on. None before `from_day`.
    Found {
        /// First day with gas.
        from_day: u32,
    },
}

/// A mains failure: no light, gas, air, heater or pump.
#[derive(Debug, Clone, Copy)]
pub struct PowerCut {
    /// First minute without power.
    pub from: u32,
    /// First minute with power again.
    pub until: u32,
    /// Flow of a battery air pump, L/min; 0 without one.
    pub battery_air_l_per_min: f64,
}
