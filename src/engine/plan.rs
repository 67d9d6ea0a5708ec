//! A checked input made ready to run: the model built, events in order, settings per minute; for one
//! tank, or for several side by side.

use std::ops::RangeInclusive;
use std::sync::OnceLock;

use crate::base::clock::DAY;
use crate::base::real::Real;
use crate::model::composition::Composition;
use crate::model::held::Held;
use crate::model::parameter_set::Values;
use crate::model::setup::{Setup, StandPlan, Surroundings, Tank};
use crate::model::start::Start;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::alike::{Unlike, alike};
use super::alone::Alone;
use super::event::Animals;
use super::gauge::Gauge;
use super::input::{ModelInput, TimerLine, TopUp};
use super::lane_plan::LanePlan;
use super::shortening::ShorteningRule;
use super::timers::{line_on, switches};
use super::valve::{Standing, possible_starts};

/// All that stays the same during a run.
pub struct Plan<R = f64> {
    /// The input, of the first tank where there are several: all have its times.
    pub input: ModelInput,
    /// The plan of each tank.
    pub lanes: Vec<LanePlan>,
    /// The model.
    pub model: TankModel<R>,
    /// Reads a tank.
    pub gauge: Gauge<R>,
    /// The rule that shortens steps.
    pub shortening: ShorteningRule<R>,
    /// The state at filling.
    pub start: State<R>,
    /// The model of each tank by itself, built when it is needed.
    by_itself: Vec<OnceLock<TankModel<f64>>>,
}

impl<R: Real> Alone for Plan<R> {
    fn model(&self, lane: usize) -> &TankModel<f64> {
        let build = || Plan::new(&self.lanes[lane].input).model;
        self.by_itself[lane].get_or_init(build)
    }
}

/// What the keeper has done so far that timers do not know, per tank.
#[derive(Debug, Clone, PartialEq)]
pub struct Keeping {
    /// Gas of the day, if any.
    pub gas: Vec<Option<TimerLine>>,
    /// Animals in the tank.
    pub animals: Vec<Vec<Animals>>,
    /// What stood on the valves when the gas of the day was set.
    pub(super) valves: Vec<Standing>,
}

impl Keeping {
    /// Nothing done yet in any of so many tanks.
    pub fn new(tanks: usize) -> Self {
        Keeping {
            gas: vec![None; tanks],
            animals: vec![Vec::new(); tanks],
            valves: vec![Standing::default(); tanks],
        }
    }
}

impl Plan<f64> {
    /// Builds the model of one tank and puts its events in order.
    pub fn new(input: &ModelInput) -> Self {
        Self::built(&[input])
    }
}

impl<R: Real> Plan<R> {
    /// Builds the model of tanks side by side, one per lane.
    ///
    /// # Errors
    /// When they differ in more than numbers: tanks side by side share every time and switch.
    pub fn abreast(inputs: &[&ModelInput]) -> Result<Self, Unlike> {
        alike(inputs)?;
        Ok(Self::built(inputs))
    }

    fn built(inputs: &[&ModelInput]) -> Self {
        let all = |number: &dyn Fn(&ModelInput) -> f64| R::gather(|lane| number(inputs[lane]));
        let values = Values::abreast(&inputs.iter().map(|i| &i.parameters).collect::<Vec<_>>());
        let tank = Tank::abreast(&inputs.iter().map(|i| &i.tank).collect::<Vec<_>>());
        let stands: Vec<StandPlan<R>> = (0..inputs[0].stands.len())
            .map(|at| StandPlan::abreast(&inputs.iter().map(|i| &i.stands[at]).collect::<Vec<_>>()))
            .collect();
        let setup = Setup {
            values: &values,
            tank: &tank,
            stands: &stands,
            surroundings: surroundings(inputs),
        };
        let start = Start {
            fill: Composition::abreast(&inputs.iter().map(|i| &i.fill).collect::<Vec<_>>()),
            temperature_c: all(&|i| i.heating.start_c),
            seed_level: all(&|i| i.seed_level),
            dry_days: all(&|i| i.dry_days),
        };
        let model = TankModel::new(&setup);
        Plan {
            gauge: Gauge::new(&setup, &model),
            model,
            start: start.state(&setup),
            shortening: ShorteningRule {
                most_per_part: values.get("dt_stiff"),
                cut_band_mmol_per_l: values.get("cut_band"),
                finer: 1,
            },
            lanes: inputs.iter().map(|input| LanePlan::new(input)).collect(),
            by_itself: vec![OnceLock::new(); R::LANES],
            input: inputs[0].clone(),
        }
    }

    /// What is switched from a minute on.
    pub fn held(&self, minute: u32, keeping: &Keeping) -> Held<R> {
        let lanes: Vec<Held<f64>> = (0..R::LANES)
            .map(|lane| {
                let gas = keeping.gas[lane].as_ref();
                self.lanes[lane].held(minute, gas, &keeping.animals[lane])
            })
            .collect();
        Held::abreast(&lanes)
    }

    /// The minutes of a day at which anything switches or happens in any lane, in order, and those at which gas
    /// might come on.
    ///
    /// Where a stand begins to shed is none of them (see [`Plan::instants`]).
    pub fn switches(&self, day: u32, gas: &[Option<TimerLine>]) -> Vec<u32> {
        let mut minutes = self.common_switches(day);
        for line in gas.iter().flatten() {
            switches(line.window, day, &mut minutes);
        }
        minutes.extend(possible_starts(&self.input, day));
        in_order(minutes, day * DAY..=(day + 1) * DAY)
    }

    /// The lanes in which something switches or happens at a minute: one there, nothing elsewhere. It must be what it
    /// is for each tank alone, since steps are cut finer after it.
    pub fn stirred(&self, minute: u32, gas: &[Option<TimerLine>]) -> R {
        let day = minute / DAY;
        let in_all = self.common_switches(day).contains(&minute);
        R::gather(|lane| {
            let mut own = Vec::new();
            if let Some(line) = &gas[lane] {
                switches(line.window, day, &mut own);
            }
            f64::from(u8::from(in_all || own.contains(&minute)))
        })
    }

    /// The minutes of a day at which something switches or happens in all lanes, in no order.
    fn common_switches(&self, day: u32) -> Vec<u32> {
        let (from, until) = (day * DAY, (day + 1) * DAY);
        let mut minutes = vec![self.input.filled_at];
        for lines in [&self.input.light, &self.input.air] {
            if let Some(line) = line_on(lines, day) {
                switches(line.window, day, &mut minutes);
            }
            minutes.extend(lines.iter().map(|line| line.from_day * DAY));
        }
        let unfed = self.input.unfed.iter();
        minutes.extend(unfed.flat_map(|(first, last)| [first * DAY, (last + 1) * DAY]));
        let cuts = self.input.power_cuts.iter();
        minutes.extend(cuts.flat_map(|cut| [cut.from, cut.until]));
        let events = &self.lanes[0].events;
        let first = events.partition_point(|event| event.minute < from);
        let today = events[first..].iter().map(|event| event.minute);
        minutes.extend(today.take_while(|&minute| minute < until));
        minutes
    }

    /// The minutes of a day up to which what is switched may be held: those at which anything switches,
    /// and the ends of steps of the clock in which a stand of any lane begins to shed.
    pub fn instants(&self, day: u32, switches: &[u32]) -> Vec<u32> {
        let mut minutes = switches.to_vec();
        let lanes = self.lanes.iter();
        minutes.extend(lanes.flat_map(LanePlan::beginnings_of_shedding));
        in_order(minutes, day * DAY..=(day + 1) * DAY)
    }
}

fn in_order(mut minutes: Vec<u32>, of: RangeInclusive<u32>) -> Vec<u32> {
    minutes.retain(|minute| of.contains(minute));
    minutes.sort_unstable();
    minutes.dedup();
    minutes
}

/// Far below any water: a heater set here never calls.
const NO_HEATER_C: f64 = -1000.0;

fn surroundings<R: Real>(inputs: &[&ModelInput]) -> Surroundings<R> {
    let all = |number: &dyn Fn(&ModelInput) -> f64| R::gather(|lane| number(inputs[lane]));
    let top_ups: Vec<&Composition> = inputs
        .iter()
        .filter_map(|input| match &input.top_up {
            TopUp::Automatic(water) => Some(water),
            TopUp::None => None,
        })
        .collect();
    Surroundings {
        room_c: all(&|i| i.room.temperature_c),
        humidity_frac: all(&|i| i.room.humidity_frac),
        heater_set_c: all(&|i| i.heating.set_c.unwrap_or(NO_HEATER_C)),
        ionic_strength_mol_per_l: all(&|i| i.refill.ionic_strength_mol_per_l()),
        top_up: (!top_ups.is_empty()).then(|| Composition::abreast(&top_ups)),
    }
}
