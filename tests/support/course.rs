//! A run made for one story, its counter-cases, and how to read it.

use firstfill::base::clock::{DAY, HOUR, days};
use firstfill::base::units::MEQ_PER_DKH;
use firstfill::engine::event::EventKind;
use firstfill::engine::input::{GasPlan, ModelInput};
use firstfill::engine::result::{Reading, RunResult, Side};
use firstfill::engine::run::run;
use firstfill::model::group::GROUPS;

use super::diary::{self, Value};

/// A tank's whole course.
pub struct Course(RunResult);

impl Course {
    /// Of a tank of the stories, or of a reference run.
    pub fn of(name: &str) -> Course {
        Course::after(name, |_| {})
    }
    /// Of any tank.
    pub fn through(input: &ModelInput) -> Course {
        Course(run(input).unwrap())
    }
    /// The same with something about it changed: the counter-case.
    pub fn after(name: &str, change: impl FnOnce(&mut ModelInput)) -> Course {
        let mut input = diary::input(name);
        change(&mut input);
        Course(run(&input).unwrap())
    }
    /// Readings between two days, both included.
    pub fn between(&self, from: f64, until: f64) -> impl Iterator<Item = &Reading> {
        let inside = move |r: &&Reading| (from..=until).contains(&days(r.minute));
        self.0.readings.iter().filter(inside)
    }
    /// The last reading of a minute.
    pub fn at(&self, day: u32, hour: u32) -> &Reading {
        let minute = day * DAY + hour * HOUR;
        self.0
            .readings
            .iter()
            .rfind(|r| r.minute == minute)
            .unwrap()
    }
    /// Just before the first event of a day.
    pub fn before_the_event_of(&self, day: u32) -> &Reading {
        let from = f64::from(day);
        let mut readings = self.between(from, from + 1.0);
        readings.find(|r| r.side == Side::Before).unwrap()
    }
    /// The highest value between two days, with its day.
    pub fn peak(&self, value: Value, from: f64, until: f64) -> (f64, f64) {
        let higher = |top: (f64, f64), r: &Reading| {
            if value(r) > top.0 {
                (value(r), days(r.minute))
            } else {
                top
            }
        };
        self.between(from, until)
            .fold((f64::NEG_INFINITY, from), higher)
    }
    /// The highest value between two days.
    pub fn highest(&self, value: Value, from: f64, until: f64) -> f64 {
        self.peak(value, from, until).0
    }
    /// The lowest value between two days.
    pub fn lowest(&self, value: Value, from: f64, until: f64) -> f64 {
        self.between(from, until)
            .map(value)
            .fold(f64::INFINITY, f64::min)
    }
    /// The first day on which a value is above a limit.
    pub fn first_above(&self, value: Value, limit: f64) -> Option<f64> {
        let found = self.0.readings.iter().find(|r| value(r) > limit);
        found.map(|r| days(r.minute))
    }
    /// The day from which total ammonia and nitrite stay under 0.15 mg N/L, if they do.
    pub fn clean_from(&self) -> Option<f64> {
        let dirty = |r: &&Reading| r.tan_mg_n_per_l >= 0.15 || r.nitrite_mg_n_per_l >= 0.15;
        let last = self.0.readings.iter().rposition(|r| dirty(&r));
        match last {
            None => Some(0.0),
            Some(last) => self.0.readings.get(last + 1).map(|r| days(r.minute)),
        }
    }
    /// The mean of a value over the days `from..until` at one hour.
    pub fn mean_at(&self, value: Value, from: u32, until: u32, hour: u32) -> f64 {
        diary::mean((from..until).map(|day| value(self.at(day, hour))))
    }
    /// The mean alkalinity of a day, dKH.
    pub fn kh(&self, day: u32) -> f64 {
        let from = f64::from(day);
        let values = self
            .between(from, from + 1.0)
            .map(|r| r.alkalinity_meq_per_l);
        diary::mean(values) / MEQ_PER_DKH
    }
    /// The run itself.
    pub fn run(&self) -> &RunResult {
        &self.0
    }
}

/// Sand instead of soil.
pub fn on_sand(input: &mut ModelInput) {
    input.tank.soil_l = 0.0;
}

/// Neither plants nor algae, nor a lamp.
pub fn bare(input: &mut ModelInput) {
    input.stands.clear();
    input
        .events
        .retain(|event| !matches!(event.kind, EventKind::Plant { .. }));
    input.parameters = input.parameters.clone().with("G0", 0.0);
    input.light.clear();
}

/// No microbes that turn ammonia or nitrite over, ever.
pub fn sterile(input: &mut ModelInput) {
    input.seed_level = 0.0;
}

/// Nothing in it but water.
pub fn empty(input: &mut ModelInput) {
    on_sand(input);
    bare(input);
    sterile(input);
    input.events.retain(|event| !event.kind.is_about_animals());
}

/// No gas.
pub fn without_gas(input: &mut ModelInput) {
    input.gas = GasPlan::None;
}

/// No lamp.
pub fn in_the_dark(input: &mut ModelInput) {
    input.light.clear();
}

/// A parameter set to another value.
pub fn with(input: &mut ModelInput, id: &str, value: f64) {
    input.parameters = input.parameters.clone().with(id, value);
}

/// Plants that take up no nitrogen: they live on what they brought.
pub fn without_uptake(input: &mut ModelInput) {
    for group in GROUPS {
        for stem in ["V_NH", "V_NO"] {
            with(input, &group.id(stem), 0.0);
        }
    }
}
