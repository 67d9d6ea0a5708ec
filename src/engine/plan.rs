//! A checked input made ready to run: the model built, events in order, settings per minute.

use crate::base::clock::DAY;
use crate::base::units::CO2_G_PER_MOL;
use crate::model::held::Held;
use crate::model::parameter_set::Values;
use crate::model::pool::MAX_STANDS;
use crate::model::setup::{Setup, Surroundings};
use crate::model::start::Start;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::event::{Animals, Event};
use super::gauge::Gauge;
use super::input::{ModelInput, TimerLine, TopUp};
use super::step::ShorteningRule;
use super::timers::{line_on, switches, value_at};

/// Hours in a day.
const HOURS: f64 = 24.0;

/// All that stays the same during a run.
pub struct Plan {
    /// The input.
    pub input: ModelInput,
    /// The model.
    pub model: TankModel<f64>,
    /// Reads a tank.
    pub gauge: Gauge,
    /// Events by minute, then by their order in one instant, then by name.
    pub events: Vec<Event>,
    /// The rule that shortens steps.
    pub shortening: ShorteningRule,
    /// The state at filling.
    pub start: State<f64>,
    shedding_from: Vec<u32>,
    recovered_at: Vec<u32>,
    mmol_per_day_and_mg_per_h: f64,
    feed_nitrogen: f64,
}

/// What the keeper has done so far that timers do not know.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Keeping {
    /// Gas of the day, if any.
    pub gas: Option<TimerLine>,
    /// Animals in the tank.
    pub animals: Vec<Animals>,
}

impl Plan {
    /// Builds the model and puts the events in order.
    pub fn new(input: &ModelInput) -> Plan {
        let values = Values::of(&input.parameters);
        let setup = setup(input, &values);
        let model = TankModel::new(&setup);
        let start = Start {
            fill: input.fill,
            temperature_c: input.heating.start_c,
            seed_level: input.seed_level,
            dry_days: input.dry_days,
        };
        let get = |id: &str| input.parameters.get(id);
        let after = |days: f64| {
            let minutes = (days * f64::from(DAY)).round() as u32;
            input
                .stands
                .iter()
                .map(|stand| stand.planted_at + minutes)
                .collect::<Vec<u32>>()
        };
        let mut events = input.events.clone();
        events.sort_by(|a, b| {
            (a.minute, a.kind.rank(), &a.name).cmp(&(b.minute, b.kind.rank(), &b.name))
        });
        Plan {
            gauge: Gauge::new(&setup),
            start: start.state(&setup),
            events,
            shortening: ShorteningRule {
                most_per_part: get("dt_stiff"),
                cut_band_mmol_per_l: get("cut_band"),
                finer: 1,
            },
            shedding_from: after(get("t_lag")),
            recovered_at: after(get("t_acc")),
            mmol_per_day_and_mg_per_h: HOURS * get("eta_CO2") / CO2_G_PER_MOL,
            feed_nitrogen: get("N_feed"),
            model,
            input: input.clone(),
        }
    }

    /// What is switched from a minute on.
    pub fn held(&self, minute: u32, keeping: &Keeping) -> Held<f64> {
        let cut = self
            .input
            .power_cuts
            .iter()
            .find(|cut| cut.from <= minute && minute < cut.until);
        let power = cut.is_none();
        let on = |lines: &[TimerLine]| value_at(lines, minute).filter(|_| power).unwrap_or(0.0);
        let light = on(&self.input.light);
        let air = cut.map_or_else(|| on(&self.input.air), |cut| cut.battery_air_l_per_min);
        let gas = on(keeping.gas.as_slice());
        let mut held = Held::quiet();
        held.light_umol_per_m2_s = light;
        held.lit = light > 0.0;
        held.gas_mmol_per_day = self.mmol_per_day_and_mg_per_h * gas;
        held.cut_off_mmol_per_l = self
            .cut_off()
            .filter(|_| gas > 0.0)
            .map(|mg_per_l| mg_per_l / CO2_G_PER_MOL);
        held.air_l_per_min = air;
        held.airing = air > 0.0;
        held.power = power;
        for stand in 0..self.input.stands.len().min(MAX_STANDS) {
            held.shedding[stand] = self.shedding_from[stand] <= minute;
        }
        self.feed(minute, &keeping.animals, &mut held);
        held
    }

    fn feed(&self, minute: u32, animals: &[Animals], held: &mut Held<f64>) {
        let day = minute / DAY;
        let fed = !self
            .input
            .unfed
            .iter()
            .any(|&(from, until)| from <= day && day <= until);
        for group in animals {
            held.animals_g += group.mass_g;
            if fed {
                held.feed_g_per_day += group.feed_g_per_day;
                held.feed_mg_n_per_day +=
                    group.feed_g_per_day * group.protein_frac * self.feed_nitrogen;
            }
        }
    }

    fn cut_off(&self) -> Option<f64> {
        match &self.input.gas {
            super::input::GasPlan::Rate {
                cut_off_mg_per_l, ..
            } => *cut_off_mg_per_l,
            _ => None,
        }
    }

    /// The minutes of a day at which anything switches or happens, in order, midnights included.
    pub fn instants(&self, day: u32, gas: Option<&TimerLine>) -> Vec<u32> {
        let (from, until) = (day * DAY, (day + 1) * DAY);
        let mut minutes = vec![from, until];
        for lines in [&self.input.light, &self.input.air] {
            if let Some(line) = line_on(lines, day) {
                switches(line.window, day, &mut minutes);
            }
        }
        if let Some(line) = gas {
            switches(line.window, day, &mut minutes);
        }
        minutes.extend(
            self.input
                .power_cuts
                .iter()
                .flat_map(|cut| [cut.from, cut.until]),
        );
        minutes.extend(self.shedding_from.iter().chain(&self.recovered_at));
        let first = self.events.partition_point(|event| event.minute < from);
        minutes.extend(
            self.events[first..]
                .iter()
                .map(|event| event.minute)
                .take_while(|&minute| minute < until),
        );
        minutes.retain(|minute| (from..=until).contains(minute));
        minutes.sort_unstable();
        minutes.dedup();
        minutes
    }
}

fn setup<'a>(input: &'a ModelInput, values: &'a Values<f64>) -> Setup<'a, f64> {
    /// Far below any water: a heater set here never calls.
    const NO_HEATER_C: f64 = -1000.0;
    Setup {
        values,
        tank: &input.tank,
        stands: &input.stands,
        surroundings: Surroundings {
            room_c: input.room.temperature_c,
            humidity_frac: input.room.humidity_frac,
            heater_set_c: input.heating.set_c.unwrap_or(NO_HEATER_C),
            ionic_strength_mol_per_l: input.refill.ionic_strength_mol_per_l(),
            top_up: match input.top_up {
                TopUp::Automatic(water) => Some(water),
                TopUp::None => None,
            },
        },
    }
}
