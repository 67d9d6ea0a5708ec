//! What the processes may know of a tank besides its state: dimensions, stands, parameter values.

use crate::base::real::Real;
use crate::chemistry::{air, solubility};

use super::composition::Composition;
use super::group::Group;
use super::parameter_set::Values;

/// Dimensions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tank<R = f64> {
    /// Free water when full (above the soil, pore water not counted), L.
    pub volume_l: R,
    /// Water surface, m².
    pub surface_m2: R,
    /// Bed, m².
    pub bed_m2: R,
    /// Glass that loses heat (walls and bottom), m².
    pub wall_m2: R,
    /// Bulk volume of active soil, L; 0 for an inert bed or none.
    pub soil_l: R,
    /// Area of films, m²; none means `a_bio` times the volume.
    pub film_m2: Option<R>,
    /// Height above the sea, m.
    pub altitude_m: R,
}

/// One planting of the plan: its own patch of the bed.
#[derive(Debug, Clone, PartialEq)]
pub struct StandPlan<R = f64> {
    /// Name of the entry, for example `stems`.
    pub name: String,
    /// Group whose numbers it uses.
    pub group: Group,
    /// Share of the bed it stands on, 0 to 1.
    pub cover_frac: R,
    /// Dry weight at planting on its patch, g/m².
    pub density_g_per_m2: R,
    /// Share of the tissue that will be shed, 0 to 1.
    pub melt_frac: R,
    /// Whether growth recovers slowly after planting (grown out of water).
    pub acclimates: bool,
    /// Whether it can use bicarbonate.
    pub uses_bicarbonate: bool,
    /// Minute of planting since midnight of day 0.
    pub planted_at: u32,
}

impl<R: Real> Tank<R> {
    /// Tanks side by side. All lanes give the area of films, or none does.
    pub fn abreast(of: &[&Tank]) -> Self {
        let all = |number: fn(&Tank) -> f64| R::gather(|lane| number(of[lane]));
        Tank {
            volume_l: all(|tank| tank.volume_l),
            surface_m2: all(|tank| tank.surface_m2),
            bed_m2: all(|tank| tank.bed_m2),
            wall_m2: all(|tank| tank.wall_m2),
            soil_l: all(|tank| tank.soil_l),
            film_m2: (of[0].film_m2).map(|_| all(|tank| tank.film_m2.unwrap_or(f64::NAN))),
            altitude_m: all(|tank| tank.altitude_m),
        }
    }
    /// Oxygen in equilibrium with the air over the tank, mg/L.
    pub fn oxygen_saturation_mg_per_l(&self, t_c: f64) -> R {
        self.at_its_pressure(|pressure| solubility::oxygen_saturation_mg_per_l(t_c, pressure))
    }
    /// Carbon dioxide in equilibrium with air that holds one part in a million, mg/L.
    pub fn co2_saturation_mg_per_l_and_ppm(&self, t_c: f64) -> R {
        self.at_its_pressure(|pressure| solubility::co2_saturation_mg_per_l(t_c, pressure, 1.0))
    }
    fn at_its_pressure(&self, law: impl Fn(f64) -> f64) -> R {
        R::gather(|lane| law(air::pressure_atm(self.altitude_m.lane(lane))))
    }
}

impl<R: Real> StandPlan<R> {
    /// One stand of tanks side by side, which differ in their numbers only.
    pub fn abreast(of: &[&StandPlan]) -> Self {
        let all = |number: fn(&StandPlan) -> f64| R::gather(|lane| number(of[lane]));
        let first = of[0];
        StandPlan {
            name: first.name.clone(),
            group: first.group,
            cover_frac: all(|stand| stand.cover_frac),
            density_g_per_m2: all(|stand| stand.density_g_per_m2),
            melt_frac: all(|stand| stand.melt_frac),
            acclimates: first.acclimates,
            uses_bicarbonate: first.uses_bicarbonate,
            planted_at: first.planted_at,
        }
    }
}

/// What processes are built from.
#[derive(Debug, Clone)]
pub struct Setup<'a, R> {
    /// Parameter values.
    pub values: &'a Values<R>,
    /// Dimensions.
    pub tank: &'a Tank<R>,
    /// Planted stands.
    pub stands: &'a [StandPlan<R>],
    /// Surroundings that do not change during a run.
    pub surroundings: Surroundings<R>,
}

/// Surroundings that do not change during a run.
#[derive(Debug, Clone, Copy)]
pub struct Surroundings<R> {
    /// Room temperature, °C.
    pub room_c: R,
    /// Relative humidity of the room, 0 to 1.
    pub humidity_frac: R,
    /// Heater set point, °C (below every temperature without a heater).
    pub heater_set_c: R,
    /// Ionic strength of the refill water, mol/L.
    pub ionic_strength_mol_per_l: R,
    /// What replaces evaporated water at once; none when nothing does.
    pub top_up: Option<Composition<R>>,
}

impl<R: Real> Setup<'_, R> {
    /// The value of a parameter.
    pub fn get(&self, id: &str) -> R {
        self.values.get(id)
    }
    /// Whether there is active soil.
    pub fn has_soil(&self) -> bool {
        R::any(R::zero().below(self.tank.soil_l))
    }
    /// Dry mass of the soil, kg.
    pub fn soil_kg(&self) -> R {
        self.tank.soil_l * self.get("rho_soil")
    }
    /// Pore water of the soil, L.
    pub fn pore_water_l(&self) -> R {
        self.tank.soil_l * self.get("por")
    }
    /// Area on which films grow, m².
    pub fn film_m2(&self) -> R {
        match self.tank.film_m2 {
            Some(area) => area,
            None => self.get("a_bio") * self.tank.volume_l,
        }
    }
    /// Area on which algae can grow, m².
    pub fn lit_m2(&self) -> R {
        self.get("s_lit") * self.tank.surface_m2
    }
}
