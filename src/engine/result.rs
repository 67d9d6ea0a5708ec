//! What a run gives back.

use crate::chemistry::indicator;
use crate::model::conserved::{FLUXES, QUANTITIES, Quantity};
use crate::model::pool::MAX_STANDS;

use super::input::ModelInput;
use super::ledger::Ledger;
use super::notice::Notice;

/// Which side of the events of its minute a reading was taken on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Nothing happened at this minute.
    Plain,
    /// Just before the events of this minute.
    Before,
    /// Just after them.
    After,
}

/// Everything that can be read off a tank at one instant.
#[derive(Debug, Clone, Copy)]
pub struct Reading {
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// Side of the events of this minute.
    pub side: Side,
    /// Total ammonia, mg N/L.
    pub tan_mg_n_per_l: f64,
    /// Free ammonia, mg N/L.
    pub free_ammonia_mg_n_per_l: f64,
    /// Nitrite, mg N/L.
    pub nitrite_mg_n_per_l: f64,
    /// Nitrous acid, mg N/L.
    pub nitrous_acid_mg_n_per_l: f64,
    /// Nitrate, mg N/L.
    pub nitrate_mg_n_per_l: f64,
    /// Phosphate, mg P/L.
    pub phosphate_mg_p_per_l: f64,
    /// Potassium, mg/L.
    pub potassium_mg_per_l: f64,
    /// Chelated iron, mg/L.
    pub iron_mg_per_l: f64,
    /// Oxygen, mg/L.
    pub oxygen_mg_per_l: f64,
    /// Oxygen, % of saturation.
    pub oxygen_saturation_percent: f64,
    /// Carbon dioxide, mg/L.
    pub co2_mg_per_l: f64,
    /// Carbon dioxide as the indicator shows it, mg/L.
    pub indicator_co2_mg_per_l: f64,
    /// pH.
    pub ph: f64,
    /// Alkalinity, meq/L.
    pub alkalinity_meq_per_l: f64,
    /// Inorganic carbon, mmol/L.
    pub inorganic_carbon_mmol_per_l: f64,
    /// Hardness, meq/L.
    pub hardness_meq_per_l: f64,
    /// Chloride, mg/L.
    pub chloride_mg_per_l: f64,
    /// Free chlorine, mg Cl2/L.
    pub chlorine_mg_cl2_per_l: f64,
    /// Monochloramine, mg Cl2/L.
    pub chloramine_mg_cl2_per_l: f64,
    /// Water above the soil, L.
    pub volume_l: f64,
    /// Temperature, °C.
    pub temperature_c: f64,
    /// Light at the soil, µmol/m²/s.
    pub light_umol_per_m2_s: f64,
    /// Gas leaving the cylinder, mg/h.
    pub gas_mg_per_h: f64,
    /// Air through the stone, L/min.
    pub air_l_per_min: f64,
    /// Ammonia oxidisers, mg COD.
    pub ammonia_oxidisers_mg_cod: f64,
    /// Nitrite oxidisers, mg COD.
    pub nitrite_oxidisers_mg_cod: f64,
    /// Complete oxidisers, mg COD.
    pub complete_oxidisers_mg_cod: f64,
    /// What the microbes could turn to nitrite and beyond with food in plenty, mg N/day.
    pub ammonia_capacity_mg_n_per_day: f64,
    /// What the microbes could turn from nitrite to nitrate with food in plenty, mg N/day.
    pub nitrite_capacity_mg_n_per_day: f64,
    /// Share of full speed that pH, carbon and inhibition leave the nitrite oxidisers, 0 to 1.
    pub nitrite_oxidiser_speed_frac: f64,
    /// Exchangeable ammonium of the soil, mg N.
    pub soil_ammonium_mg_n: f64,
    /// Slow organic nitrogen of the soil, mg N.
    pub soil_organic_n_mg: f64,
    /// Exchangeable phosphorus of the soil, mg P.
    pub soil_phosphorus_mg_p: f64,
    /// Acid-exchange capacity left, meq.
    pub soil_acid_meq: f64,
    /// Ammonium in the pore water of the soil, mg N/L.
    pub pore_water_ammonium_mg_n_per_l: f64,
    /// Detritus, g dry weight.
    pub detritus_g: f64,
    /// Nitrogen of the detritus, mg N.
    pub detritus_mg_n: f64,
    /// Algae, g dry weight per m² of lit surface.
    pub algae_g_per_m2: f64,
    /// Nitrogen of the algae, mg N.
    pub algae_mg_n: f64,
    /// Plants, g dry weight (submersed and out-of-water tissue).
    pub plants_g: f64,
    /// Nitrogen of the plants, mg N.
    pub plants_mg_n: f64,
    /// Each stand, g dry weight.
    pub stands_g: [f64; MAX_STANDS],
    /// Share of the bed shaded by plants, 0 to 1.
    pub canopy_frac: f64,
}

impl Reading {
    /// pH of the indicator's reference liquid, which gives it its colour.
    pub fn indicator_ph(&self) -> f64 {
        indicator::reference_ph(self.indicator_co2_mg_per_l, self.temperature_c)
    }
}

/// What has crossed the boundary and been turned over since filling, at one instant.
#[derive(Debug, Clone)]
pub struct Tally {
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// Side of the events of this minute.
    pub side: Side,
    /// Into the tank (positive) or out (negative), per way and conserved quantity.
    pub crossed: [[f64; QUANTITIES.len()]; FLUXES.len()],
    /// Alkalinity made (positive) or used per process, meq, in the order of `RunResult::processes`.
    pub alkalinity_meq: Vec<f64>,
    /// Total ammonia made (positive) or used per process, mg N.
    pub tan_mg_n: Vec<f64>,
}

/// An event with what it did.
#[derive(Debug, Clone)]
pub struct EventRecord {
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// Dotted path of its entry.
    pub name: String,
    /// What was done, in words.
    pub what: String,
    /// Water taken out, L (changes only).
    pub litres: f64,
    /// The tank just before.
    pub before: Reading,
    /// The tank just after.
    pub after: Reading,
}

/// One day on which the valve was tuned.
#[derive(Debug, Clone)]
pub struct Tuning {
    /// The day.
    pub day: u32,
    /// Hours of the gas from this day on.
    pub window: crate::base::clock::Window,
    /// Gas leaving the cylinder from this day on, mg/h.
    pub gas_mg_per_h: f64,
    /// Highest concentration of the tuned day, mg/L.
    pub highest_mg_per_l: f64,
    /// Concentration at lights-on of the tuned day, mg/L; none in the dark.
    pub at_lights_on_mg_per_l: Option<f64>,
    /// Trials it took.
    pub trials: u32,
    /// Whether the target was reached within 0.2 mg/L.
    pub reached: bool,
    /// Whether the start found gives 90 % of the target at lights-on (true when hours are given).
    pub start_found: bool,
}

/// How much work a run was.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Work {
    /// Steps taken (shortened ones counted each).
    pub steps: u64,
    /// Rate evaluations.
    pub evaluations: u64,
    /// Steps in which processes were slowed so that no pool fell below zero.
    pub held_back: u64,
}

/// A finished run.
#[derive(Debug, Clone)]
pub struct RunResult {
    /// What was run.
    pub input: ModelInput,
    /// Readings at every step of the clock and on both sides of every event, look-ahead included.
    pub readings: Vec<Reading>,
    /// Boundary crossings at every full hour and on both sides of every event.
    pub tallies: Vec<Tally>,
    /// Ids of the processes, in the order of the tallies.
    pub processes: Vec<&'static str>,
    /// Events with what they did.
    pub events: Vec<EventRecord>,
    /// Valve tunings.
    pub tunings: Vec<Tuning>,
    /// Start + in − out = now, per conserved quantity, at the end of the judged run.
    pub ledger: Ledger,
    /// What the user should know.
    pub notices: Vec<Notice>,
    /// How much work it was.
    pub work: Work,
}

impl RunResult {
    /// Readings up to the end of the judged run (the look-ahead left out).
    pub fn shown(&self) -> &[Reading] {
        let end = self.input.end_minute();
        let count = self.readings.partition_point(|r| r.minute <= end);
        let shown = &self.readings[..count];
        // at the closing midnight itself only what belongs to the judged run counts
        match shown.last() {
            Some(last) if last.minute == end && last.side == Side::After => &shown[..count - 1],
            _ => shown,
        }
    }
    /// Readings of one day, both midnights included.
    pub fn day(&self, day: u32) -> &[Reading] {
        use crate::base::clock::DAY;
        let from = self.readings.partition_point(|r| r.minute < day * DAY);
        let until = self
            .readings
            .partition_point(|r| r.minute <= (day + 1) * DAY);
        &self.readings[from..until]
    }
    /// What crossed the boundary by one way, of one quantity, up to a tally.
    pub fn crossed(tally: &Tally, flux: crate::model::conserved::Flux, quantity: Quantity) -> f64 {
        let q = QUANTITIES
            .iter()
            .position(|&x| x == quantity)
            .expect("every quantity is listed");
        tally.crossed[flux.index()][q]
    }
}
