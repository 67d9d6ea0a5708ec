//! Traces: what a lesson draws over time.

use crate::analysis::compare::strategy::Strategy;
use crate::analysis::figures::kh_dkh;
use crate::analysis::limits::Limits;
use crate::base::clock::DAY;
use crate::engine::result::{Reading, RunResult};
use crate::model::conserved::{Flux, Quantity};

/// One curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Trace {
    /// Total ammonia.
    Ammonia,
    /// Free ammonia.
    FreeAmmonia,
    /// Nitrite.
    Nitrite,
    /// Oxygen.
    Oxygen,
    /// Carbon dioxide.
    Co2,
    /// pH.
    Ph,
    /// Alkalinity.
    Kh,
    /// What the ammonia oxidisers could turn over.
    AmmoniaCapacity,
    /// What the nitrite oxidisers could turn over.
    NitriteCapacity,
    /// How many of 100 plausible tanks are ready.
    Ready,
    /// Nitrogen that stays in the soil.
    InSoil,
    /// Nitrogen of plants and algae.
    InPlants,
    /// Nitrogen dissolved in the water.
    InWater,
    /// Nitrogen carried out with changed water.
    CarriedOut,
    /// Nitrogen gone as gas.
    GoneAsGas,
}

impl Trace {
    /// Its name in words.
    pub fn name(self) -> &'static str {
        self.told().0
    }
    /// Its unit; empty for pH.
    pub fn unit(self) -> &'static str {
        self.told().1
    }
    /// Digits after the point when a value is read off.
    pub fn digits(self) -> usize {
        self.told().2
    }
    /// Its column in tables, with the unit.
    pub fn column(self) -> &'static str {
        self.told().3
    }
    fn told(self) -> (&'static str, &'static str, usize, &'static str) {
        match self {
            Trace::Ammonia => ("total ammonia", "mg N/L", 2, "tan_mg_n_per_l"),
            Trace::FreeAmmonia => ("free ammonia", "mg N/L", 3, "free_ammonia_mg_n_per_l"),
            Trace::Nitrite => ("nitrite", "mg N/L", 2, "nitrite_mg_n_per_l"),
            Trace::Oxygen => ("oxygen", "mg/L", 1, "oxygen_mg_per_l"),
            Trace::Co2 => ("CO2", "mg/L", 0, "co2_mg_per_l"),
            Trace::Ph => ("pH", "", 2, "ph"),
            Trace::Kh => ("KH", "dKH", 2, "kh_dkh"),
            Trace::AmmoniaCapacity => (
                "ammonia step",
                "mg N/day",
                1,
                "ammonia_capacity_mg_n_per_day",
            ),
            Trace::NitriteCapacity => (
                "nitrite step",
                "mg N/day",
                1,
                "nitrite_capacity_mg_n_per_day",
            ),
            Trace::Ready => ("ready", "of 100", 0, "ready_of_100"),
            Trace::InSoil => ("still in the soil", "mg N", 0, "soil_mg_n"),
            Trace::InPlants => ("plants, algae", "mg N", 0, "plants_mg_n"),
            Trace::InWater => ("in the water", "mg N", 0, "water_mg_n"),
            Trace::CarriedOut => ("carried out", "mg N", 0, "carried_out_mg_n"),
            Trace::GoneAsGas => ("gone as gas", "mg N", 0, "gas_mg_n"),
        }
    }
    /// Its value at a reading of a step.
    pub fn value(self, step: &Strategy<'_>, r: &Reading) -> f64 {
        let run = &step.outcome.run;
        match self {
            Trace::Ammonia => r.tan_mg_n_per_l,
            Trace::FreeAmmonia => r.free_ammonia_mg_n_per_l,
            Trace::Nitrite => r.nitrite_mg_n_per_l,
            Trace::Oxygen => r.oxygen_mg_per_l,
            Trace::Co2 => r.co2_mg_per_l,
            Trace::Ph => r.ph,
            Trace::Kh => kh_dkh(r),
            Trace::AmmoniaCapacity => r.ammonia_capacity_mg_n_per_day,
            Trace::NitriteCapacity => r.nitrite_capacity_mg_n_per_day,
            Trace::Ready => step.curve.of_100_by(r.minute / DAY),
            Trace::InSoil => r.soil_ammonium_mg_n + r.soil_organic_n_mg,
            Trace::InPlants => r.plants_mg_n + r.algae_mg_n,
            Trace::InWater => {
                r.volume_l * (r.tan_mg_n_per_l + r.nitrite_mg_n_per_l + r.nitrate_mg_n_per_l)
            }
            Trace::CarriedOut => gone(run, r, Flux::RemovedByChanges),
            Trace::GoneAsGas => gone(run, r, Flux::NitrogenGas),
        }
    }
}

/// Nitrogen that left by a way up to the last midnight or event before a reading, mg N.
fn gone(run: &RunResult, r: &Reading, way: Flux) -> f64 {
    let after = run
        .tallies
        .partition_point(|tally| tally.minute <= r.minute);
    let last = after.checked_sub(1).map(|at| &run.tallies[at]);
    last.map_or(0.0, |tally| {
        -RunResult::crossed(tally, way, Quantity::Nitrogen)
    })
}

/// Curves that share an axis.
#[derive(Debug, Clone, Copy)]
pub struct Panel {
    /// What they show together.
    pub title: &'static str,
    /// The curves, at most three.
    pub traces: &'static [Trace],
    /// The lowest value at which the axis may end.
    pub least: f64,
    /// Whether the axis begins at nothing.
    pub from_zero: bool,
    /// A line of reference.
    pub line: Option<Line>,
}

/// A level line with its name.
#[derive(Debug, Clone, Copy)]
pub struct Line {
    /// Its name.
    pub name: &'static str,
    /// Its height.
    pub value: fn(&Strategy<'_>) -> f64,
}

impl Line {
    /// A limit that tanks are judged by.
    pub const fn of(name: &'static str, value: fn(&Strategy<'_>) -> f64) -> Option<Line> {
        Some(Line { name, value })
    }
}

/// The limits of a step.
pub fn limits<'a>(step: &'a Strategy<'_>) -> &'a Limits {
    &step.case.limits
}
