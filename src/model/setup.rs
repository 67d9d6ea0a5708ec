//! What the processes may know of a tank besides its state: dimensions, stands, parameter values.

use crate::base::real::Real;

use super::composition::Composition;
use super::group::Group;
use super::parameter_set::Values;

/// Dimensions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tank {
    /// Free water when full (above the soil, pore water not counted), L.
    pub volume_l: f64,
    /// Water surface, m².
    pub surface_m2: f64,
    /// Bed, m².
    pub bed_m2: f64,
    /// Glass that loses heat (walls and bottom), m².
    pub wall_m2: f64,
    /// Bulk volume of active soil, L; 0 for an inert bed or none.
    pub soil_l: f64,
    /// Area of films, m²; none means `a_bio` times the volume.
    pub film_m2: Option<f64>,
    /// Height above the sea, m.
    pub altitude_m: f64,
}

/// One planting of the plan: its own patch of the bed.
#[derive(Debug, Clone, PartialEq)]
pub struct StandPlan {
    /// Name of the entry, for example `stems`.
    pub name: String,
    /// Group whose numbers it uses.
    pub group: Group,
    /// Share of the bed it stands on, 0 to 1.
    pub cover_frac: f64,
    /// Dry weight at planting on its patch, g/m².
    pub density_g_per_m2: f64,
    /// Share of the tissue that will be shed, 0 to 1.
    pub melt_frac: f64,
    /// Whether growth recovers slowly after planting (grown out of water).
    pub acclimates: bool,
    /// Whether it can use bicarbonate.
    pub uses_bicarbonate: bool,
    /// Minute of planting since midnight of day 0.
    pub planted_at: u32,
}

/// What processes are built from.
#[derive(Debug, Clone)]
pub struct Setup<'a, R> {
    /// Parameter values.
    pub values: &'a Values<R>,
    /// Dimensions.
    pub tank: &'a Tank,
    /// Planted stands.
    pub stands: &'a [StandPlan],
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
    pub top_up: Option<Composition>,
}

impl<R: Real> Setup<'_, R> {
    /// The value of a parameter.
    pub fn get(&self, id: &str) -> R {
        self.values.get(id)
    }
    /// Whether there is active soil.
    pub fn has_soil(&self) -> bool {
        self.tank.soil_l > 0.0
    }
    /// Dry mass of the soil, kg.
    pub fn soil_kg(&self) -> R {
        R::of(self.tank.soil_l) * self.get("rho_soil")
    }
    /// Pore water of the soil, L.
    pub fn pore_water_l(&self) -> R {
        R::of(self.tank.soil_l) * self.get("por")
    }
    /// Area on which films grow, m².
    pub fn film_m2(&self) -> R {
        match self.tank.film_m2 {
            Some(area) => R::of(area),
            None => self.get("a_bio") * R::of(self.tank.volume_l),
        }
    }
    /// Area on which algae can grow, m².
    pub fn lit_m2(&self) -> R {
        self.get("s_lit") * R::of(self.tank.surface_m2)
    }
}
