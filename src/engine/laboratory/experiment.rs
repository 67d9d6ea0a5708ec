//! From a test that has been set up to its course, through the plan and the steps of every run.

use crate::base::clock::DAY;
use crate::chemistry::still_water::StillWater;
use crate::engine::input::{GasPlan, Heating, ModelInput, Room, TopUp};
use crate::engine::plan::Plan;
use crate::engine::simulation::Simulation;
use crate::engine::valve::Valves;
use crate::model::composition::Composition;
use crate::model::pool::Pool;
use crate::model::state::State;

use super::trajectory::Sampler;
use super::{Laboratory, LaboratoryError, Trajectory};

/// Alkalinity of water that is to hold a pH and has been given none, meq/L.
const USUAL_ALKALINITY_MEQ_PER_L: f64 = 1.0;
/// Two pH that differ by less are the same: it is found to 1e-12.
const SAME_PH: f64 = 1e-9;
/// Relative humidity of the room, 0 to 1 (matters to evaporation alone).
const HUMIDITY: f64 = 0.5;

impl Laboratory {
    /// The longest step of the clock, minutes (30 when nothing else is said). Switches and events cut
    /// it, fast gas exchange cuts it into parts.
    #[must_use]
    pub fn step_minutes(mut self, minutes: u32) -> Self {
        self.above_zero("the step, minutes", f64::from(minutes));
        self.step_minutes = minutes;
        self
    }

    /// Cuts every part of a step into so many equal ones, to measure the error of a step.
    #[must_use]
    pub fn finer(mut self, times: u32) -> Self {
        self.above_zero("the parts of a step", f64::from(times));
        self.finer = times;
        self
    }

    /// Runs the test for so many days (to the nearest minute) and gives its course.
    ///
    /// # Errors
    /// The first thing that made no sense while it was set up, or the first impossible number.
    pub fn run(mut self, days: f64) -> Result<Trajectory, LaboratoryError> {
        let end = self.minute(days);
        self.above_zero("the length of the test, minutes", f64::from(end));
        self.bring_to_ph();
        if let Some(problem) = self.problem {
            return Err(problem);
        }
        let input = self.input(end);
        let mut plan = Plan::new(&input);
        plan.model = plan
            .model
            .limited(|id| self.at_work.contains(&id), &self.held);
        plan.start = self.start();
        plan.shortening.finer = self.finer;
        course(&plan, end)
    }

    /// Sets the inorganic carbon at which the water has the pH it is to hold.
    fn bring_to_ph(&mut self) {
        let Some(ph) = self.ph else { return };
        if self.fill.alkalinity_meq_per_l == 0.0 {
            self.fill.alkalinity_meq_per_l = USUAL_ALKALINITY_MEQ_PER_L;
        }
        let water = StillWater {
            t_c: self.temperature_c,
            ionic_strength_mol_per_l: self.refill().ionic_strength_mol_per_l(),
            alkalinity_meq_per_l: self.fill.alkalinity_meq_per_l,
        };
        let carbon = water.carbon_at_ph(ph);
        let reached = water.ph_and_co2(carbon).0;
        // written so that a NaN is refused
        if (reached - ph).abs() <= SAME_PH {
            self.fill.inorganic_carbon_mmol_per_l = carbon;
        } else {
            let what = "the pH at this alkalinity, whatever the carbon,";
            self.refuse(LaboratoryError::impossible(what, ph));
        }
    }

    /// The water of water changes: the first, but for what is said to differ.
    fn refill(&self) -> Composition {
        let first = Composition {
            temperature_c: self.temperature_c,
            ..self.fill
        };
        self.refill.iter().fold(first, |water, &(pool, per_l)| {
            water.with(pool, per_l).unwrap_or(water)
        })
    }

    /// What has been put in, and nothing else.
    fn start(&self) -> State<f64> {
        let mut state = State::default();
        state[Pool::Volume] = self.tank.volume_l;
        state[Pool::Temperature] = self.temperature_c;
        for (pool, per_l) in self.fill.dissolved() {
            state[pool] = per_l * self.tank.volume_l;
        }
        for &(pool, amount) in &self.amounts {
            state[pool] = amount;
        }
        state
    }

    fn input(&self, end: u32) -> ModelInput {
        ModelInput {
            filled_at: 0,
            last_day: (end - 1) / DAY,
            lookahead_days: 0,
            step_minutes: self.step_minutes,
            tank: self.tank,
            room: Room {
                temperature_c: self.temperature_c,
                humidity_frac: HUMIDITY,
            },
            heating: Heating {
                set_c: None,
                start_c: self.temperature_c,
            },
            fill: self.fill,
            refill: self.refill(),
            top_up: TopUp::Automatic(self.refill()),
            parameters: self.parameters.clone(),
            seed_level: 0.0,
            dry_days: 0.0,
            stands: self.stands.clone(),
            light: self.light.clone(),
            gas: GasPlan::Rate {
                lines: self.gas.clone(),
                cut_off_mg_per_l: None,
            },
            air: self.air.clone(),
            power_cuts: self.power_cuts.clone(),
            unfed: Vec::new(),
            events: self.events.clone(),
        }
    }
}

/// Goes through the days of a plan, as a run does.
fn course(plan: &Plan, end: u32) -> Result<Trajectory, LaboratoryError> {
    let mut sampler = Sampler::default();
    let mut vessel = Simulation::filled(plan);
    let mut valves = Valves::new(plan);
    valves.take(&mut vessel, end, &mut sampler)?;
    vessel.show(&mut sampler);
    Ok(sampler.trajectory(vessel.work(0)))
}
