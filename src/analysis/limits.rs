//! Limits, all editable, each with its source.

use crate::base::real::Real;
use crate::base::sources::{Source, practice, published};

/// One limit.
#[derive(Debug, Clone, Copy)]
pub struct Limit {
    /// Key in `[limits]` of a scenario.
    pub key: &'static str,
    /// What it bounds, in words.
    pub meaning: &'static str,
    /// Unit as written in a scenario.
    pub unit: &'static str,
    /// The bound.
    pub value: f64,
    /// Where it comes from.
    pub source: Source,
    /// Whether it was changed by the user.
    pub given: bool,
}

const fn limit(
    key: &'static str,
    meaning: &'static str,
    unit: &'static str,
    value: f64,
    source: Source,
) -> Limit {
    Limit {
        key,
        meaning,
        unit,
        value,
        source,
        given: false,
    }
}

/// All limits of a run.
///
/// The first four are ripening limits: they decide the ready day. The others are running limits:
/// they stand beside it and never move it. The last two are no limits of animals: together they say
/// when light falls on ammonia.
#[derive(Debug, Clone, Copy)]
pub struct Limits {
    /// Total ammonia, mg N/L.
    pub total_ammonia: Limit,
    /// Nitrite, mg N/L.
    pub nitrite: Limit,
    /// Chloride needed per nitrite nitrogen, by mass.
    pub chloride_per_nitrite: Limit,
    /// Free ammonia, mg N/L.
    pub free_ammonia: Limit,
    /// Lowest oxygen, mg/L.
    pub oxygen: Limit,
    /// Highest carbon dioxide, mg/L.
    pub co2: Limit,
    /// Change of temperature at a water change, °C.
    pub temperature_jump: Limit,
    /// Change of pH at a water change.
    pub ph_jump: Limit,
    /// Nitrate with shrimp, mg N/L.
    pub shrimp_nitrate: Limit,
    /// Light over which ammonia is counted as lit, µmol/m²/s at the soil.
    pub bright_light: Limit,
    /// Total ammonia over which light is counted as falling on ammonia, mg N/L.
    pub ammonia_in_light: Limit,
}

const TOTAL_AMMONIA: Limit = limit(
    "total_ammonia",
    "highest total ammonia",
    "mg N/L",
    0.2,
    practice("0.25 on the card"),
);
const NITRITE: Limit = limit(
    "nitrite",
    "highest nitrite",
    "mg N/L",
    0.08,
    practice("0.25 mg/L of the ion on the card"),
);
const CHLORIDE_PER_NITRITE: Limit = limit(
    "chloride_per_nitrite",
    "least chloride per nitrite nitrogen by mass",
    "1",
    20.0,
    practice("aquaculture advice from memory: 20 to 1"),
);
const FREE_AMMONIA: Limit = limit(
    "free_ammonia",
    "highest free ammonia",
    "mg N/L",
    0.02,
    published(&[], "state hatchery advice, 0.02 safe"),
);
const OXYGEN: Limit = limit(
    "oxygen",
    "lowest oxygen",
    "mg/L",
    5.0,
    published(&[], "extension advice, 5 mg/L or more for health"),
);
const CO2: Limit = limit(
    "co2",
    "highest carbon dioxide",
    "mg/L",
    30.0,
    practice("20 is the cautious choice"),
);
const TEMPERATURE_JUMP: Limit = limit(
    "temperature_jump",
    "largest change of temperature at a water change",
    "K",
    2.0,
    published(&[], "public aquarium guideline"),
);
const PH_JUMP: Limit = limit(
    "ph_jump",
    "largest change of pH at a water change",
    "1",
    0.5,
    practice("judgement, no source"),
);
const SHRIMP_NITRATE: Limit = limit(
    "shrimp_nitrate",
    "highest nitrate with shrimp",
    "mg N/L",
    4.5,
    practice("20 mg/L of the ion"),
);
const BRIGHT_LIGHT: Limit = limit(
    "bright_light",
    "light that counts when ammonia stands in it",
    "µmol/m²/s",
    50.0,
    practice("judgement, no source"),
);
const AMMONIA_IN_LIGHT: Limit = limit(
    "ammonia_in_light",
    "total ammonia that counts when light falls on it",
    "mg N/L",
    0.5,
    practice("judgement, no source"),
);

impl Default for Limits {
    fn default() -> Self {
        Limits {
            total_ammonia: TOTAL_AMMONIA,
            nitrite: NITRITE,
            chloride_per_nitrite: CHLORIDE_PER_NITRITE,
            free_ammonia: FREE_AMMONIA,
            oxygen: OXYGEN,
            co2: CO2,
            temperature_jump: TEMPERATURE_JUMP,
            ph_jump: PH_JUMP,
            shrimp_nitrate: SHRIMP_NITRATE,
            bright_light: BRIGHT_LIGHT,
            ammonia_in_light: AMMONIA_IN_LIGHT,
        }
    }
}

impl Limits {
    /// All limits, ripening ones first.
    pub fn all(&self) -> [&Limit; 11] {
        [
            &self.total_ammonia,
            &self.nitrite,
            &self.chloride_per_nitrite,
            &self.free_ammonia,
            &self.oxygen,
            &self.co2,
            &self.temperature_jump,
            &self.ph_jump,
            &self.shrimp_nitrate,
            &self.bright_light,
            &self.ammonia_in_light,
        ]
    }
    /// All limits, to be changed.
    pub fn all_mut(&mut self) -> [&mut Limit; 11] {
        [
            &mut self.total_ammonia,
            &mut self.nitrite,
            &mut self.chloride_per_nitrite,
            &mut self.free_ammonia,
            &mut self.oxygen,
            &mut self.co2,
            &mut self.temperature_jump,
            &mut self.ph_jump,
            &mut self.shrimp_nitrate,
            &mut self.bright_light,
            &mut self.ammonia_in_light,
        ]
    }
    /// The nitrite limit in a water with this much chloride, mg N/L: the lower of the two rules.
    pub fn nitrite_with<R: Real>(&self, chloride_mg_per_l: R) -> R {
        let by_chloride = chloride_mg_per_l / R::of(self.chloride_per_nitrite.value);
        R::of(self.nitrite.value).least(by_chloride)
    }
    /// What the two confirming tests are held against, mg N/L: total ammonia, and nitrite at that chloride.
    pub fn of_tests(&self, chloride_mg_per_l: f64) -> [f64; 2] {
        [
            self.total_ammonia.value,
            self.nitrite_with(chloride_mg_per_l),
        ]
    }
}
