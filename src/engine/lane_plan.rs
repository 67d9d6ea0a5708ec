//! What one tank of a run knows of its own plan: its events, and what its timers say at a minute.

use crate::base::clock::DAY;
use crate::base::units::CO2_G_PER_MOL;
use crate::model::content::Contents;
use crate::model::held::Held;
use crate::model::parameter_set::Values;
use crate::model::pool::MAX_STANDS;

use super::event::{Animals, Event};
use super::input::{GasPlan, ModelInput, TimerLine};
use super::timers::value_at;

/// Hours in a day.
const HOURS: f64 = 24.0;

/// The plan of one tank.
#[derive(Debug, Clone)]
pub struct LanePlan {
    /// The input, but for its events.
    pub input: ModelInput,
    /// Events by minute, then by their order in one instant, then by name.
    pub events: Vec<Event>,
    /// What each pool contains.
    pub contents: Contents<f64>,
    /// Minute from which each stand sheds.
    shedding_from: Vec<u32>,
    mmol_per_day_and_mg_per_h: f64,
    feed_nitrogen: f64,
}

impl LanePlan {
    /// Puts the events in order.
    pub fn new(input: &ModelInput) -> Self {
        let mut input = input.clone();
        let mut events = std::mem::take(&mut input.events);
        events.sort_by(|a, b| {
            (a.minute, a.kind.rank(), &a.name).cmp(&(b.minute, b.kind.rank(), &b.name))
        });
        let get = |id: &str| input.parameters.get(id);
        LanePlan {
            events,
            contents: Contents::new(&Values::of(&input.parameters)),
            shedding_from: shedding_from(&input),
            mmol_per_day_and_mg_per_h: HOURS * get("eta_CO2") / CO2_G_PER_MOL,
            feed_nitrogen: get("N_feed"),
            input,
        }
    }

    /// What is switched from a minute on, with the gas of the day and the animals in the tank.
    pub fn held(&self, minute: u32, gas: Option<&TimerLine>, animals: &[Animals]) -> Held<f64> {
        let cut = self
            .input
            .power_cuts
            .iter()
            .find(|cut| cut.from <= minute && minute < cut.until);
        let power = cut.is_none();
        let on = |lines: &[TimerLine]| value_at(lines, minute).filter(|_| power).unwrap_or(0.0);
        let light = on(&self.input.light);
        let air = cut.map_or_else(|| on(&self.input.air), |cut| cut.battery_air_l_per_min);
        let mut held = Held::quiet();
        held.light_umol_per_m2_s = light;
        held.lit = light > 0.0;
        held.gas_mmol_per_day =
            self.mmol_per_day_and_mg_per_h * gas.map_or(0.0, |line| on(std::slice::from_ref(line)));
        held.cut_off_mmol_per_l = self.cut_off();
        held.air_l_per_min = air;
        held.airing = air > 0.0;
        held.power = power;
        for stand in 0..self.input.stands.len().min(MAX_STANDS) {
            held.shedding[stand] = self.sheds(stand, minute);
        }
        self.feed(minute, animals, &mut held);
        held
    }

    /// Share of the step of the clock around a minute in which a stand sheds. A step is not cut where
    /// shedding begins, since that would cut it for tanks side by side too; it sheds for its share.
    fn sheds(&self, stand: usize, minute: u32) -> f64 {
        let step = self.input.step_minutes;
        let end = (minute / step + 1) * step;
        let left = end.saturating_sub(self.shedding_from[stand]);
        f64::from(left.min(step)) / f64::from(step)
    }

    /// The steps of the clock in which a stand begins to shed: their beginnings and ends.
    pub(super) fn beginnings_of_shedding(&self) -> impl Iterator<Item = u32> + '_ {
        let step = self.input.step_minutes;
        let from = self.shedding_from.iter();
        from.flat_map(move |from| [from / step * step, from.div_ceil(step) * step])
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
            GasPlan::Rate {
                cut_off_mg_per_l, ..
            } => cut_off_mg_per_l.map(|mg_per_l| mg_per_l / CO2_G_PER_MOL),
            _ => None,
        }
    }
}

fn shedding_from(input: &ModelInput) -> Vec<u32> {
    let lag = (input.parameters.get("t_lag") * f64::from(DAY)).round() as u32;
    let stands = input.stands.iter();
    stands.map(|stand| stand.planted_at + lag).collect()
}
