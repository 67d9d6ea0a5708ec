//! What a run gives back.

use crate::model::conserved::{FLUXES, QUANTITIES, Quantity};

use super::input::ModelInput;
use super::ledger::Ledger;
use super::notice::Notice;
pub use super::reading::{Reading, Side};
pub use super::work::Work;

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

/// A finished run.
#[derive(Debug, Clone)]
pub struct RunResult {
    /// What was run.
    pub input: ModelInput,
    /// Readings at the start of every step (the steps of the clock and every switch) and on both sides
    /// of every event, look-ahead included.
    pub readings: Vec<Reading>,
    /// Readings inside steps, where they were asked for; nothing else depends on them.
    pub close_ups: Vec<Reading>,
    /// Boundary crossings: at every full hour and on both sides of every event of a run that is looked at
    /// closely, at midnights of others.
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
    /// All readings from a minute to another, both included, with those inside steps, in order.
    pub fn seen(&self, from: u32, until: u32) -> Vec<&Reading> {
        let within = |readings: &'_ [Reading]| {
            let first = readings.partition_point(|r| r.minute < from);
            first..readings.partition_point(|r| r.minute <= until)
        };
        let mut seen: Vec<&Reading> = self.readings[within(&self.readings)].iter().collect();
        seen.extend(&self.close_ups[within(&self.close_ups)]);
        // stable: both sides of an event stay in order
        seen.sort_by_key(|reading| reading.minute);
        seen
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
