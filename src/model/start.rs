//! The state at filling: prepared water, fresh or dry-started soil, first films and algae.

use crate::base::real::Real;
use crate::base::sources::{calibrated, derived, practice};
use crate::chemistry::activity::ionic_strength_mol_per_l;
use crate::chemistry::still_water::StillWater;

use super::composition::Composition;
use super::films::GUILDS;
use super::parameter::{ParameterSpec, parameter};
use super::pool::Pool;
use super::setup::Setup;
use super::state::State;

/// Seeding, dry start and the gear.
pub const PARAMETERS: &[ParameterSpec] = &[
    parameter(
        "seed_little",
        "first films called a little, as a multiple of level 1",
        "1",
        10.0,
        (3.0, 30.0),
        derived("a handful of plants and wood from a running tank"),
    ),
    parameter(
        "seed_live",
        "first films called live medium, as a multiple of level 1",
        "1",
        100.0,
        (30.0, 300.0),
        derived("live filter medium"),
    ),
    parameter(
        "seed_XA",
        "ammonia oxidisers per litre of mature medium",
        "mg COD/L",
        5.0,
        (0.5, 20.0),
        calibrated(&[], ""),
    ),
    parameter(
        "seed_XN",
        "nitrite oxidisers per litre of mature medium",
        "mg COD/L",
        2.0,
        (0.2, 8.0),
        calibrated(&[], ""),
    ),
    parameter(
        "seed_XK",
        "complete oxidisers per litre of mature medium",
        "mg COD/L",
        5.0,
        (0.5, 20.0),
        calibrated(&[], ""),
    ),
    parameter(
        "k_dry",
        "nitrification of a moist soil before filling",
        "/day",
        0.03,
        (0.01, 0.06),
        calibrated(&[], "no data"),
    ),
    parameter(
        "y_dry",
        "share of the nitrogen nitrified in a moist soil that is there as nitrate at filling",
        "1",
        0.5,
        (0.2, 0.8),
        calibrated(&[], "no data"),
    ),
    parameter(
        "surv_dry",
        "share of films grown in a moist soil that survives filling",
        "1",
        0.02,
        (0.003, 0.1),
        calibrated(&[], "no data"),
    ),
    parameter(
        "f_rated",
        "flow of a filter with media, as a share of its rating",
        "1",
        0.6,
        (0.5, 0.7),
        practice(""),
    ),
];

/// How a tank begins.
#[derive(Debug, Clone, Copy)]
pub struct Start<R = f64> {
    /// Water of the first filling, ready to use.
    pub fill: Composition<R>,
    /// Temperature at filling, °C.
    pub temperature_c: R,
    /// First films as a multiple of level 1.
    pub seed_level: R,
    /// Days the soil stood moist before filling.
    pub dry_days: R,
}

impl<R: Real> Start<R> {
    /// The state of a tank that has just been filled. Stands are planted later, by events.
    pub fn state(&self, setup: &Setup<'_, R>) -> State<R> {
        let mut state = State::default();
        let full = setup.tank.volume_l;
        for (pool, per_l) in self.fill.dissolved() {
            state[pool] = per_l * full;
        }
        state[Pool::Volume] = full;
        state[Pool::Temperature] = self.temperature_c;
        state[Pool::Indicator] = self.co2_of_fill();
        state[Pool::Algae] = setup.get("G0") * setup.lit_m2();
        for (guild, id) in GUILDS.iter().zip(["XA0", "XN0", "XK0"]) {
            state[*guild] = self.seed_level * setup.get(id) * full;
        }
        if setup.has_soil() {
            self.soil(setup, &mut state);
        }
        state
    }

    /// ```text
    /// s = 1 − e^(−k_dry·days)      NX0·s is nitrified before filling: y_dry of it stays as nitrate, the rest is
    /// lost; XA += surv_dry·Y_A·s·NX0      XN += surv_dry·Y_N·s·NX0
    /// ```
    fn soil(&self, setup: &Setup<'_, R>, state: &mut State<R>) {
        let kg = setup.soil_kg();
        let fresh = kg * setup.get("q0");
        let turned = fresh * (R::one() - (-setup.get("k_dry") * self.dry_days).exp());
        state[Pool::SoilAmmonium] = fresh - turned;
        state[Pool::Nitrate] += setup.get("y_dry") * turned;
        let survive = setup.get("surv_dry") * turned;
        state[Pool::AmmoniaOxidisers] += survive * setup.get("Y_AOB");
        state[Pool::NitriteOxidisers] += survive * setup.get("Y_NOB");
        state[Pool::SoilOrganicN] = kg * setup.get("N_o0");
        state[Pool::SoilPhosphorus] = kg * setup.get("P0");
        state[Pool::SoilAcid] = kg * setup.get("E_H0");
    }

    fn co2_of_fill(&self) -> R {
        let fill = &self.fill;
        R::gather(|lane| {
            let (hardness, alkalinity) = (fill.hardness_meq_per_l, fill.alkalinity_meq_per_l);
            let alkalinity_meq_per_l = alkalinity.lane(lane);
            let water = StillWater {
                t_c: fill.temperature_c.lane(lane),
                ionic_strength_mol_per_l: ionic_strength_mol_per_l(
                    hardness.lane(lane),
                    alkalinity_meq_per_l,
                ),
                alkalinity_meq_per_l,
            };
            let carbon = fill.inorganic_carbon_mmol_per_l.lane(lane);
            water.ph_and_co2(carbon).1
        })
    }
}
