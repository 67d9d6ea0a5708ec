//! Works out what rate laws look at, once per evaluation.

use crate::base::real::Real;
use crate::base::sources::{derived, memory};
use crate::chemistry::{ammonia, carbonate::Carbonate, nitrous_acid};

use super::canopy::{Canopies, Canopy};
use super::films::FilmSpeeds;
use super::limitation::monod;
use super::parameter::{ParameterSpec, parameter};
use super::pool::{MAX_STANDS, Pool};
use super::setup::Setup;
use super::state::State;
use super::temperature::{Factor, FactorList};
use super::water::Water;

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
        0.9,
        (0.05, 2.0),
        derived(
            "the error of fast gas exchange stays below 1e-3 of its range on every shipped scenario (with 1 below \
             1.2e-3, for a tenth less time where air runs)",
        ),
    ),
];

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
    #[inline(always)]
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
        water.films = self
            .film_speeds
            .look(&water.state, &water.factors, water.held.power);
        if water.held.lit {
            self.canopies.look(&water.state, &mut water.canopies);
        }
    }

    /// Light and shade in each stand, whether the light is on or not.
    #[inline(always)]
    pub fn canopies(&self, state: &State<R>) -> [Canopy<R>; MAX_STANDS] {
        let mut canopies = [Canopy::bare(); MAX_STANDS];
        self.canopies.look(state, &mut canopies);
        canopies
    }

    #[inline(always)]
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

    #[inline(always)]
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
