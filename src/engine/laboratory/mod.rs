//! The engine as a laboratory: a vessel, the processes you pick, and the same steps as a real run.
//!
//! A published batch test is a vessel in which little happens: some microbes, what they eat, an air
//! stone. Here such a test is set up without a scenario file. What is not picked does not act, and
//! what is not put in is not there. Matrix, rate laws and scheme are those of every run; steps are shorter.
//!
//! ```
//! use firstfill::engine::laboratory::Laboratory;
//! use firstfill::model::pool::Pool;
//!
//! // chlorine fades at 2 /day: e^(−2) of it is left after a day
//! let test = Laboratory::bottle(1.0)
//!     .only(&["residual_decay"])
//!     .parameter("k_Cl", 2.0)
//!     .dissolved(Pool::Chlorine, 0.5)
//!     .run(1.0)?;
//! let left = test.last().reading.chlorine_mg_cl2_per_l / 0.5;
//! assert!((left - (-2.0f64).exp()).abs() < 1e-4);
//! # Ok::<(), firstfill::engine::laboratory::LaboratoryError>(())
//! ```

mod error;
mod experiment;
mod forcing;
mod trajectory;

pub use error::LaboratoryError;
pub use trajectory::{Sample, Trajectory};

use crate::model::composition::Composition;
use crate::model::parameter_set::ParameterSet;
use crate::model::parameters;
use crate::model::pool::Pool;
use crate::model::processes;
use crate::model::setup::{StandPlan, Tank};

use super::event::Event;
use super::input::{PowerCut, TimerLine};

/// Temperature of a vessel when nothing else is said, °C: that at which rates are quoted.
const USUAL_C: f64 = 20.0;
/// Step of the clock when nothing else is said, minutes: far shorter than that of a run, since published numbers are held
/// to more digits than a chart shows.
const USUAL_STEP_MINUTES: u32 = 5;

/// A test being set up. The first thing that makes no sense is kept and comes back from `run`.
#[derive(Debug, Clone)]
pub struct Laboratory {
    tank: Tank,
    at_work: Vec<&'static str>,
    parameters: ParameterSet,
    temperature_c: f64,
    fill: Composition,
    refill: Vec<(Pool, f64)>,
    amounts: Vec<(Pool, f64)>,
    held: Vec<Pool>,
    ph: Option<f64>,
    stands: Vec<StandPlan>,
    light: Vec<TimerLine>,
    gas: Vec<TimerLine>,
    air: Vec<TimerLine>,
    power_cuts: Vec<PowerCut>,
    events: Vec<Event>,
    step_minutes: u32,
    finer: u32,
    problem: Option<LaboratoryError>,
}

impl Laboratory {
    /// A full, stoppered bottle of so many litres: no surface to the air, no bed, no soil. Films grow
    /// on `a_bio` square metres per litre.
    pub fn bottle(litres: f64) -> Laboratory {
        Laboratory::vessel(Tank {
            volume_l: litres,
            surface_m2: 0.0,
            bed_m2: 0.0,
            wall_m2: 0.0,
            soil_l: 0.0,
            film_m2: None,
            altitude_m: 0.0,
        })
    }

    /// A vessel of any dimensions, filled with pure water at 20 °C. Nothing acts in it yet.
    pub fn vessel(tank: Tank) -> Laboratory {
        let mut laboratory = Laboratory {
            tank,
            at_work: Vec::new(),
            parameters: ParameterSet::default(),
            temperature_c: USUAL_C,
            fill: Composition::PURE,
            refill: Vec::new(),
            amounts: Vec::new(),
            held: Vec::new(),
            ph: None,
            stands: Vec::new(),
            light: Vec::new(),
            gas: Vec::new(),
            air: Vec::new(),
            power_cuts: Vec::new(),
            events: Vec::new(),
            step_minutes: USUAL_STEP_MINUTES,
            finer: 1,
            problem: None,
        };
        laboratory.above_zero("the volume of the vessel, L", tank.volume_l);
        laboratory
    }

    /// Picks the processes that act, by their ids (`explain processes` lists them); all others rest.
    #[must_use]
    pub fn only(mut self, ids: &[&str]) -> Self {
        self.at_work.clear();
        for id in ids {
            match processes::IDS.iter().find(|known| *known == id) {
                Some(known) => self.at_work.push(known),
                None => self.refuse(LaboratoryError::unknown_process(id)),
            }
        }
        self
    }

    /// Sets a parameter by its id, in the unit it is declared in. Its usual range may be left, not its
    /// sign: a half-saturation of 0 or 1e9 switches a limit off.
    #[must_use]
    pub fn parameter(mut self, id: &str, value: f64) -> Self {
        match parameters::spec(id) {
            None => self.refuse(LaboratoryError::unknown_parameter(id)),
            Some(spec) if !spec.allows(value) => {
                self.refuse(LaboratoryError::impossible(spec.meaning, value));
            }
            Some(_) => self.parameters = self.parameters.with(id, value),
        }
        self
    }

    /// Puts in something dissolved, per litre, in the unit of its pool.
    #[must_use]
    pub fn dissolved(mut self, pool: Pool, per_l: f64) -> Self {
        self.amount_of(pool, per_l);
        match self.fill.with(pool, per_l) {
            Some(water) => self.fill = water,
            None => self.refuse(LaboratoryError::NotDissolved { pool }),
        }
        self
    }

    /// Puts in an amount of anything, per vessel, in the unit of its pool.
    #[must_use]
    pub fn amount(mut self, pool: Pool, amount: f64) -> Self {
        self.amount_of(pool, amount);
        match self.fill.with(pool, amount / self.tank.volume_l) {
            Some(water) => self.fill = water,
            None => self.amounts.push((pool, amount)),
        }
        self
    }

    /// The temperature of water and room, °C.
    #[must_use]
    pub fn temperature(mut self, celsius: f64) -> Self {
        self.finite("the temperature, °C", celsius);
        self.temperature_c = celsius;
        self
    }

    /// Holds pools as they are: no process changes them, as if made good at once. Doses and water
    /// changes still do.
    #[must_use]
    pub fn hold(mut self, pools: &[Pool]) -> Self {
        self.held.extend_from_slice(pools);
        self
    }

    /// Brings the water to a pH by its inorganic carbon, and holds that and alkalinity, so that the
    /// pH stays. The water needs alkalinity for it (1 meq/L if none has been put in).
    #[must_use]
    pub fn hold_ph(mut self, ph: f64) -> Self {
        self.finite("the pH", ph);
        self.ph = Some(ph);
        self.hold(&[Pool::Dic, Pool::Alkalinity])
    }

    fn amount_of(&mut self, pool: Pool, value: f64) {
        if !value.is_finite() || (value < 0.0 && !pool.may_be_negative()) {
            self.refuse(LaboratoryError::impossible(&format!("{pool:?}"), value));
        }
    }
    fn finite(&mut self, what: &str, value: f64) {
        if !value.is_finite() {
            self.refuse(LaboratoryError::impossible(what, value));
        }
    }
    fn above_zero(&mut self, what: &str, value: f64) {
        if !(value.is_finite() && value > 0.0) {
            self.refuse(LaboratoryError::impossible(what, value));
        }
    }
    fn refuse(&mut self, problem: LaboratoryError) {
        self.problem.get_or_insert(problem);
    }
}
