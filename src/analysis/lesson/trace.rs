//! Traces: what a lesson draws over time.

use crate::analysis::compare::strategy::Strategy;
use crate::analysis::figures::kh_dkh;
use crate::analysis::limits::Limits;
use crate::base::clock::DAY;
use crate::engine::result::{Reading, RunResult};
use crate::model::conserved::{Flux, Quantity};

use super::nitrogen;

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
    /// What the ammonia oxidisers weigh, those that do both steps among them.
    AmmoniaOxidisers,
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
    /// Nitrogen of detritus and microbes.
    InDetritus,
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
            Trace::AmmoniaOxidisers => ("oxidisers", "mg COD", 1, "ammonia_oxidisers_mg_cod"),
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
            Trace::InDetritus => ("detritus, cells", "mg N", 0, "detritus_mg_n"),
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
            Trace::AmmoniaOxidisers => r.ammonia_oxidisers_mg_cod + r.complete_oxidisers_mg_cod,
            Trace::AmmoniaCapacity => r.ammonia_capacity_mg_n_per_day,
            Trace::NitriteCapacity => r.nitrite_capacity_mg_n_per_day,
            Trace::Ready => step.curve.of_100_by(r.minute / DAY),
            Trace::InSoil => nitrogen::in_soil(r),
            Trace::InPlants => nitrogen::in_plants(r),
            Trace::InDetritus => nitrogen::in_detritus(run, r),
            Trace::InWater => nitrogen::in_water(r),
            Trace::CarriedOut => nitrogen::carried_out(run, r),
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
    /// Lines of reference.
    pub lines: &'static [Line],
}

/// A level line with its name.
#[derive(Debug, Clone, Copy)]
pub struct Line {
    /// Its name.
    pub name: &'static str,
    /// Its height.
    pub value: fn(&Strategy<'_>) -> f64,
    /// The curve that it belongs to, where a panel has others; it has the colour of that curve.
    pub of: Option<Trace>,
}

impl Line {
    /// A limit that tanks are judged by.
    pub const fn of(name: &'static str, value: fn(&Strategy<'_>) -> f64) -> Line {
        let of = None;
        Line { name, value, of }
    }
    /// A limit of one curve of several.
    pub const fn for_one(of: Trace, name: &'static str, value: fn(&Strategy<'_>) -> f64) -> Line {
        let of = Some(of);
        Line { name, value, of }
    }
}

/// The limits of a step.
pub fn limits<'a>(step: &'a Strategy<'_>) -> &'a Limits {
    &step.case.limits
}
