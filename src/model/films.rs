//! The films of nitrifiers: how fast each guild could grow and how crowded the surfaces are.

use crate::base::real::Real;
use crate::base::sources::{
    BAGCHI_2014, ECOSIM, HIATT_GRADY_2008, KITS_2017, MALONE_PFEIFFER_2006, SIN_2008,
    VANNECKE_VOLCKE, calibrated, derived, memory, published,
};

use super::parameter::{ParameterSpec, parameter};
use super::pool::Pool;
use super::setup::Setup;
use super::state::State;
use super::temperature::{Factor, FactorList, Factors, theta};

/// Growth, yield and room of the guilds.
pub const PARAMETERS: &[ParameterSpec] = &[
    parameter(
        "mu_AOB",
        "fastest growth of ammonia oxidisers at 20 °C",
        "/day",
        0.80,
        (0.50, 1.1),
        published(&[HIATT_GRADY_2008, SIN_2008], "0.78; 0.5 to 2.1"),
    ),
    parameter(
        "mu_NOB",
        "fastest growth of nitrite oxidisers at 20 °C",
        "/day",
        0.80,
        (0.40, 1.1),
        published(
            &[HIATT_GRADY_2008, SIN_2008],
            "0.78; 0.4 to 1.05; 0.5 to 0.8 spans measured start-ups",
        ),
    ),
    parameter(
        "mu_K",
        "fastest growth of complete oxidisers at 20 °C",
        "/day",
        0.35,
        (0.2, 0.5),
        calibrated(&[KITS_2017], "low rate, high affinity"),
    ),
    parameter(
        "Y_AOB",
        "yield of ammonia oxidisers",
        "g/g",
        0.15,
        (0.11, 0.21),
        published(&[SIN_2008], "g COD per g N"),
    ),
    parameter(
        "Y_NOB",
        "yield of nitrite oxidisers",
        "g/g",
        0.05,
        (0.03, 0.09),
        published(&[SIN_2008], "g COD per g N"),
    ),
    parameter(
        "Y_K",
        "yield of complete oxidisers",
        "g/g",
        0.20,
        (0.15, 0.25),
        calibrated(&[KITS_2017], "g COD per g N"),
    ),
    parameter(
        "th_AOB",
        "temperature factor of ammonia oxidisers",
        "1",
        1.10,
        (1.07, 1.12),
        published(&[ECOSIM, VANNECKE_VOLCKE], "1.096 to 1.103"),
    ),
    parameter(
        "th_NOB",
        "temperature factor of nitrite oxidisers",
        "1",
        1.07,
        (1.04, 1.08),
        published(&[ECOSIM, VANNECKE_VOLCKE], "1.061 to 1.071"),
    ),
    parameter(
        "th_K",
        "temperature factor of complete oxidisers",
        "1",
        1.06,
        (1.04, 1.10),
        calibrated(&[], ""),
    ),
    parameter(
        "q_area",
        "most nitrogen a film can oxidise per area",
        "g N/m²/day",
        0.5,
        (0.2, 1.0),
        memory(
            &[MALONE_PFEIFFER_2006],
            "aquaculture filters at 1 to 2 mg/L",
        ),
    ),
    parameter(
        "a_bio",
        "area on which films grow, per litre of tank",
        "m²/L",
        0.08,
        (0.02, 0.2),
        derived("filter media 1 to 5 m², glass, soil and leaves 1 to 3 m² in 50 L"),
    ),
    parameter(
        "phi_filt",
        "share of the films that sits in the filter",
        "1",
        0.8,
        (0.5, 0.9),
        published(&[BAGCHI_2014], "81 to 86 % of conversion"),
    ),
];

/// The guilds, in the order of [`Films`].
pub const GUILDS: [Pool; 3] = [
    Pool::AmmoniaOxidisers,
    Pool::NitriteOxidisers,
    Pool::CompleteOxidisers,
];

/// Films at one instant.
#[derive(Debug, Clone, Copy)]
pub struct Films<R> {
    /// Fastest growth of each guild at the present temperature, /day.
    pub speed: [R; 3],
    /// Share of the room for ammonia oxidation that is taken (may exceed 1).
    pub ammonia_crowding: R,
    /// The same for nitrite oxidation.
    pub nitrite_crowding: R,
    /// Share of the films that water reaches.
    pub active: R,
}

impl<R: Real> Films<R> {
    /// No films.
    pub fn none() -> Self {
        let none = R::zero();
        Films {
            speed: [none; 3],
            ammonia_crowding: none,
            nitrite_crowding: none,
            active: R::one(),
        }
    }
    /// Share of new growth that sloughs off.
    pub fn sloughing(crowding: R) -> R {
        crowding.least(R::one())
    }
}

/// Works out [`Films`].
#[derive(Debug, Clone)]
pub struct FilmSpeeds<R> {
    fastest: [R; 3],
    per_yield: [R; 3],
    temperature: [Factor; 3],
    per_room: R,
    outside_filter: R,
}

impl<R: Real> FilmSpeeds<R> {
    /// Prepares the guilds of a tank.
    pub fn new(setup: &Setup<'_, R>, factors: &mut FactorList<R>) -> Self {
        let reference = setup.get("T_ref_bio");
        let mut factor = |id: &str| factors.held(id, theta(setup.get(id), reference));
        FilmSpeeds {
            fastest: [setup.get("mu_AOB"), setup.get("mu_NOB"), setup.get("mu_K")],
            per_yield: ["Y_AOB", "Y_NOB", "Y_K"].map(|id| R::one() / setup.get(id)),
            temperature: [factor("th_AOB"), factor("th_NOB"), factor("th_K")],
            per_room: R::one() / (R::of(1000.0) * setup.get("q_area") * setup.film_m2()),
            outside_filter: R::one() - setup.get("phi_filt"),
        }
    }

    /// ```text
    /// μ_g(T) = μ·θ^(min(T,30) − 20)
    /// L_A = (XA·μ_A/Y_A + XK·μ_K/Y_K)/(1000·q_area·A_bio)        L_N = (XN·μ_N/Y_N)/(1000·q_area·A_bio)
    /// ```
    #[inline(always)]
    pub fn look(&self, state: &State<R>, factors: &Factors<R>, power: bool) -> Films<R> {
        let mut films = Films::none();
        let mut demand = [R::zero(); 3];
        for guild in 0..3 {
            let speed = self.fastest[guild] * factors.get(self.temperature[guild]);
            films.speed[guild] = speed;
            demand[guild] = state[GUILDS[guild]] * speed * self.per_yield[guild];
        }
        films.ammonia_crowding = (demand[0] + demand[2]) * self.per_room;
        films.nitrite_crowding = demand[1] * self.per_room;
        films.active = if power { R::one() } else { self.outside_filter };
        films
    }
}
