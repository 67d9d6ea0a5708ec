//! Nitrogen of the central run, from where it came and where it is: one account for curves, table and words.
//!
//! ```text
//! in the tank once it was full + given off by the soil + brought in  =  in the tank at the end + gone
//! ```
//! The soil itself stands outside: what it still holds is told apart.

use crate::base::units::N_PER_CL2;
use crate::engine::result::{EventRecord, Reading, RunResult, Side};
use crate::model::conserved::{Flux, Quantity};

/// The parameter that says how much nitrogen microbes are made of.
const IN_CELLS: &str = "i_N";

/// Dissolved in the water, mg N.
pub fn in_water(r: &Reading) -> f64 {
    let dissolved = r.tan_mg_n_per_l
        + r.nitrite_mg_n_per_l
        + r.nitrate_mg_n_per_l
        + N_PER_CL2 * r.chloramine_mg_cl2_per_l;
    dissolved * r.volume_l
}

/// In plants and algae, mg N.
pub fn in_plants(r: &Reading) -> f64 {
    r.plants_mg_n + r.algae_mg_n
}

/// Still in the soil, mg N.
pub fn in_soil(r: &Reading) -> f64 {
    r.soil_ammonium_mg_n + r.soil_organic_n_mg
}

/// In detritus and microbes, mg N.
pub fn in_detritus(run: &RunResult, r: &Reading) -> f64 {
    let microbes =
        r.ammonia_oxidisers_mg_cod + r.nitrite_oxidisers_mg_cod + r.complete_oxidisers_mg_cod;
    let mut parameters = run.input.parameters.iter();
    let in_cells = parameters.find(|(spec, _, _)| spec.id == IN_CELLS);
    r.detritus_mg_n + in_cells.map_or(0.0, |(_, mg_per_mg, _)| mg_per_mg) * microbes
}

/// Gone by a way up to the end, mg N.
pub fn gone(run: &RunResult, way: Flux) -> f64 {
    -run.ledger.of(Quantity::Nitrogen).by(way)
}

/// All there was: what is in the tank at the end, and what is gone, mg N.
pub fn whole(run: &RunResult) -> Option<f64> {
    let end = run.shown().last()?;
    let ways = [
        Flux::RemovedByChanges,
        Flux::RemovedByCare,
        Flux::NitrogenGas,
    ];
    let left: f64 = ways.into_iter().map(|way| gone(run, way)).sum();
    Some(in_water(end) + in_plants(end) + in_detritus(run, end) + left)
}

/// What the soil gave from filling to the end, mg N.
pub fn given_by_soil(run: &RunResult) -> Option<f64> {
    let filled = run.shown().iter();
    let mut filled = filled.take_while(|r| r.minute <= run.input.filled_at);
    Some(in_soil(filled.next()?) - in_soil(run.shown().last()?))
}

/// What changed water had carried out at a reading, mg N: it rises at every change, not at midnight alone.
pub fn carried_out(run: &RunResult, r: &Reading) -> f64 {
    let is_done = |record: &&EventRecord| {
        record.minute < r.minute || record.minute == r.minute && r.side != Side::Before
    };
    let changes = run.events.iter().filter(|record| record.litres > 0.0);
    changes.take_while(is_done).map(taken).sum()
}

/// What one change carried out, mg N.
fn taken(record: &EventRecord) -> f64 {
    in_water(&record.before) * record.litres / record.before.volume_l
}
