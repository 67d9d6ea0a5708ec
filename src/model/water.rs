//! What rate laws look at: concentrations, pH and the shared terms, worked out once per evaluation.

use crate::base::real::Real;
use crate::base::sources::{derived, memory};
use crate::base::units::CO2_G_PER_MOL;
use crate::chemistry::{ammonia, carbonate::Carbonate, nitrous_acid};

use super::component::Pool;
use super::films::{FilmSpeeds, Films};
use super::limitation::monod;
use super::parameter::{ParameterSpec, parameter};
use super::setup::Setup;
use super::stand::{Canopies, Canopy, MAX_STANDS};
use super::state::State;
use super::temperature::{Factor, FactorList, Factors};

/// Parameters of the shared terms.
pub const PARAMETERS: &[ParameterSpec] = &[
    parameter(
        "K_OD",
        "oxygen at which respiration and decay run at half speed",
        "mg/L",
        0.5,
        (0.2, 1.0),
        memory(&[], ""),
    ),
    parameter(
        "T_ref_bio",
        "reference temperature of microbes, soil, detritus and algae",
        "°C",
        20.0,
        (20.0, 20.0),
        derived("fixed by the definition of the rates"),
    ),
    parameter(
        "T_ref_plant",
        "reference temperature of plants and of soil–water exchange",
        "°C",
        25.0,
        (25.0, 25.0),
        derived("fixed by the definition of the rates"),
    ),
    parameter(
        "T_ref_fish",
        "reference temperature of fish respiration",
        "°C",
        24.0,
        (24.0, 24.0),
        derived("fixed by the definition of the rates"),
    ),
    parameter(
        "T_hold",
        "temperature above which photosynthesis, uptake and nitrifiers speed up no more",
        "°C",
        30.0,
        (28.0, 33.0),
        memory(&[], ""),
    ),
    parameter(
        "dt_stiff",
        "most gas exchange, air and valve control in one part of a step",
        "1",
        0.3,
        (0.05, 0.3),
        derived("keeps the second order of the step; chosen on 150 random tanks"),
    ),
];

/// What is switched, held over a whole step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Held<R> {
    /// Light at the soil, µmol/m²/s; 0 in the dark.
    pub light_umol_per_m2_s: R,
    /// Whether it is light.
    pub lit: bool,
    /// Carbon dioxide dissolving from the cylinder, mmol/day.
    pub gas_mmol_per_day: R,
    /// Concentration at which a controller closes the valve, mmol/L, if there is one.
    pub cut_off_mmol_per_l: Option<R>,
    /// Air through the stone, L/min.
    pub air_l_per_min: R,
    /// Whether the air stone runs.
    pub airing: bool,
    /// Whether the mains are on: filter flow, heater, pump.
    pub power: bool,
    /// Which stands are shedding their out-of-water tissue.
    pub shedding: [bool; MAX_STANDS],
    /// Animals in the tank, g.
    pub animals_g: R,
    /// Feed eaten, g/day.
    pub feed_g_per_day: R,
    /// Nitrogen of that feed, mg N/day.
    pub feed_mg_n_per_day: R,
}

impl<R: Real> Held<R> {
    /// Nothing switched on, the mains running, no animals.
    pub fn quiet() -> Self {
        Held {
            light_umol_per_m2_s: R::zero(),
            lit: false,
            gas_mmol_per_day: R::zero(),
            cut_off_mmol_per_l: None,
            air_l_per_min: R::zero(),
            airing: false,
            power: true,
            shedding: [false; MAX_STANDS],
            animals_g: R::zero(),
            feed_g_per_day: R::zero(),
            feed_mg_n_per_day: R::zero(),
        }
    }
}

/// The tank at one instant, as rate laws see it. Concentrations are per litre of free water.
#[derive(Debug, Clone, Copy)]
pub struct Water<R> {
    /// Amounts of all pools.
    pub state: State<R>,
    /// What is switched.
    pub held: Held<R>,
    /// Days since midnight of day 0.
    pub days: f64,
    /// Factors at the present temperature.
    pub factors: Factors<R>,
    /// Total ammonia, mg N/L.
    pub tan: R,
    /// Nitrite, mg N/L.
    pub nitrite: R,
    /// Nitrate, mg N/L.
    pub nitrate: R,
    /// Phosphate, mg P/L.
    pub phosphate: R,
    /// Potassium, mg/L.
    pub potassium: R,
    /// Chelated iron, mg/L.
    pub iron: R,
    /// Oxygen, mg/L.
    pub oxygen: R,
    /// Inorganic carbon, mmol/L.
    pub carbon: R,
    /// Alkalinity, meq/L.
    pub alkalinity: R,
    /// Free chlorine and monochloramine together, mg Cl2/L.
    pub residual: R,
    /// Activity of H+, mol/L.
    pub hydrogen: R,
    /// Its inverse.
    pub inverse_hydrogen: R,
    /// CO2, mmol/L.
    pub co2: R,
    /// Bicarbonate, mmol/L.
    pub bicarbonate: R,
    /// Free ammonia, mg N/L.
    pub free_ammonia: R,
    /// Nitrous acid, mg N/L.
    pub nitrous_acid: R,
    /// Monod factor of oxygen for respiration and decay.
    pub oxic: R,
    /// Ammonium in the pore water of the soil, mg N/L.
    pub pore_tan: R,
    /// Phosphate in the pore water of the soil, mg P/L.
    pub pore_phosphate: R,
    /// How fast the nitrifier guilds could grow, and how crowded their films are.
    pub films: Films<R>,
    /// Light and shade in each stand.
    pub canopies: [Canopy<R>; MAX_STANDS],
}

impl<R: Real> Water<R> {
    /// The amount of a pool.
    #[inline(always)]
    pub fn amount(&self, pool: Pool) -> R {
        self.state[pool]
    }
    /// The value of a temperature factor.
    #[inline(always)]
    pub fn factor(&self, factor: Factor) -> R {
        self.factors.get(factor)
    }
    /// Water above the soil, L.
    #[inline(always)]
    pub fn volume(&self) -> R {
        self.state[Pool::Volume]
    }
    /// Temperature, °C.
    #[inline(always)]
    pub fn temperature(&self) -> R {
        self.state[Pool::Temperature]
    }
    /// A water in which nothing has been worked out yet.
    pub fn blank() -> Self {
        let none = R::zero();
        Water {
            state: State::default(),
            held: Held::quiet(),
            days: 0.0,
            factors: Factors::default(),
            tan: none,
            nitrite: none,
            nitrate: none,
            phosphate: none,
            potassium: none,
            iron: none,
            oxygen: none,
            carbon: none,
            alkalinity: none,
            residual: none,
            hydrogen: R::of(1e-7),
            inverse_hydrogen: R::of(1e7),
            co2: none,
            bicarbonate: none,
            free_ammonia: none,
            nitrous_acid: none,
            oxic: none,
            pore_tan: none,
            pore_phosphate: none,
            films: Films::none(),
            canopies: [Canopy { passed: R::one() }; MAX_STANDS],
        }
    }
    /// CO2, mg/L.
    pub fn co2_mg_per_l(&self) -> R {
        self.co2 * R::of(CO2_G_PER_MOL)
    }
}

/// Works out a [`Water`] from a state.
#[derive(Debug, Clone)]
pub struct Observer<R> {
    k1: Factor,
    k12: Factor,
    kw: Factor,
    inverse_gamma: Factor,
    ten_to_pka: Factor,
    nitrous_acidity: Factor,
    half_oxygen: R,
    soil_hold_n_l: R,
    soil_hold_p_l: R,
    film_speeds: FilmSpeeds<R>,
    canopies: Canopies<R>,
}

impl<R: Real> Observer<R> {
    /// Prepares the shared terms of a tank.
    pub fn new(setup: &Setup<'_, R>, factors: &mut FactorList<R>) -> Self {
        let ionic = setup.surroundings.ionic_strength_mol_per_l;
        let at = move |t: f64| Carbonate::at(t, ionic);
        Observer {
            k1: factors.free("k1", move |t| at(t).k1),
            k12: factors.free("k12", move |t| at(t).k12),
            kw: factors.free("kw", move |t| at(t).kw),
            inverse_gamma: factors.free("1/gamma1", move |t| at(t).inverse_gamma),
            ten_to_pka: factors.free("pKa of ammonium", |t| R::of(ammonia::pka(t)).exp10()),
            nitrous_acidity: factors.free("acidity of nitrous acid", |t| {
                R::of(nitrous_acid::acidity(t))
            }),
            half_oxygen: setup.get("K_OD"),
            soil_hold_n_l: setup.soil_kg() * setup.get("Kd") + setup.pore_water_l(),
            soil_hold_p_l: setup.soil_kg() * setup.get("KdP") + setup.pore_water_l(),
            film_speeds: FilmSpeeds::new(setup, factors),
            canopies: Canopies::new(setup),
        }
    }

    /// Looks at a state. `hydrogen` is a guess for the activity of H+.
    #[inline]
    pub fn look(&self, water: &mut Water<R>, hydrogen: R) {
        let state = &water.state;
        let per_l = R::one() / state[Pool::Volume];
        water.tan = state[Pool::Tan] * per_l;
        water.nitrite = state[Pool::Nitrite] * per_l;
        water.nitrate = state[Pool::Nitrate] * per_l;
        water.phosphate = state[Pool::Phosphate] * per_l;
        water.potassium = state[Pool::Potassium] * per_l;
        water.iron = state[Pool::Iron] * per_l;
        water.oxygen = state[Pool::Oxygen] * per_l;
        water.carbon = state[Pool::Dic] * per_l;
        water.alkalinity = state[Pool::Alkalinity] * per_l;
        water.residual = (state[Pool::Chlorine] + state[Pool::Chloramine]) * per_l;
        water.oxic = monod(water.oxygen, self.half_oxygen);
        self.acids(water, hydrogen);
        self.pore_water(water);
        self.film_speeds.look(water);
        self.canopies.look(water);
    }

    #[inline]
    fn acids(&self, water: &mut Water<R>, guess: R) {
        let carbonate = Carbonate {
            k1: water.factor(self.k1),
            k12: water.factor(self.k12),
            kw: water.factor(self.kw),
            inverse_gamma: water.factor(self.inverse_gamma),
        };
        let milli = R::of(1e-3);
        water.hydrogen = carbonate.hydrogen(water.carbon * milli, water.alkalinity * milli, guess);
        water.inverse_hydrogen = R::one() / water.hydrogen;
        let (co2, bicarbonate) = carbonate.shares(water.hydrogen);
        water.co2 = water.carbon * co2;
        water.bicarbonate = water.carbon * bicarbonate;
        water.free_ammonia =
            water.tan / (R::one() + water.hydrogen * water.factor(self.ten_to_pka));
        water.nitrous_acid = water.nitrite
            / (R::one() + water.factor(self.nitrous_acidity) * water.inverse_hydrogen);
    }

    #[inline]
    fn pore_water(&self, water: &mut Water<R>) {
        let none = R::zero();
        let soil = none.below(self.soil_hold_n_l);
        water.pore_tan = R::pick(
            soil,
            water.state[Pool::SoilAmmonium] / self.soil_hold_n_l,
            none,
        );
        water.pore_phosphate = R::pick(
            soil,
            water.state[Pool::SoilPhosphorus] / self.soil_hold_p_l,
            none,
        );
    }
}
