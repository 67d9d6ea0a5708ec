//! Numbers behind a cause: what the microbes, the soil and pH did in the central run, up to a day.

use crate::analysis::figures::kh_dkh;
use crate::base::clock::DAY;
use crate::base::maths::ln;
use crate::base::units::MEQ_PER_DKH;
use crate::chemistry::ammonia::free_share;
use crate::engine::result::{Reading, RunResult, Tally};

/// Days over which the growth of a film is taken.
const WEEK: u32 = 7;
/// Soil that takes up alkalinity in exchange for its acid.
const SOIL: &[&str] = &["acid_exchange"];
/// What turns ammonia to nitrite and beyond.
const OXIDISERS: &[&str] = &["ammonia_oxidation", "complete_oxidation"];
/// The pH of the evening in hard water, at which a total is looked at.
pub const EVENING_PH: f64 = 8.5;

/// In how many days the ammonia oxidisers doubled over the week before a day; none where they did not grow.
pub fn doubling_days(run: &RunResult, day: u32) -> Option<f64> {
    let (from, until) = (midnight(run, day.checked_sub(WEEK)?)?, midnight(run, day)?);
    let grown = ln(until.ammonia_oxidisers_mg_cod / from.ammonia_oxidisers_mg_cod);
    (grown > 0.0).then(|| f64::from(WEEK) * ln(2.0) / grown)
}

/// Alkalinity that the soil has taken up to a day, dKH of the tank's water.
pub fn soil_took_dkh(run: &RunResult, day: u32) -> Option<f64> {
    took_dkh(run, day, SOIL)
}

/// Alkalinity that the ammonia oxidisers have used up to a day, dKH of the tank's water.
pub fn nitrifiers_took_dkh(run: &RunResult, day: u32) -> Option<f64> {
    took_dkh(run, day, OXIDISERS)
}

fn took_dkh(run: &RunResult, day: u32, processes: &[&str]) -> Option<f64> {
    let (tally, reading) = (tally(run, day)?, midnight(run, day)?);
    let pairs = run.processes.iter().zip(&tally.alkalinity_meq);
    let own = pairs.filter(|(id, _)| processes.contains(id));
    let used_meq: f64 = own.map(|(_, made)| -made).sum();
    Some(used_meq / (reading.volume_l * MEQ_PER_DKH))
}

/// Alkalinity that changes of water have brought up to a day, less what they took, dKH of the tank's water.
pub fn changes_brought_dkh(run: &RunResult, day: u32) -> f64 {
    let records = run.events.iter();
    let changes = records.filter(|record| record.litres > 0.0 && record.minute < day * DAY);
    changes
        .map(|record| kh_dkh(&record.after) - kh_dkh(&record.before))
        .sum()
}

/// The first day, from one on, whose midnight finds the ammonia oxidisers able to turn over so much, mg N/day.
pub fn day_of_capacity(run: &RunResult, from_day: u32, mg_n_per_day: f64) -> Option<u32> {
    let opens_a_day = |r: &&Reading| r.minute % DAY == 0 && r.minute >= from_day * DAY;
    let mut midnights = run.shown().iter().filter(opens_a_day);
    let found = midnights.find(|r| r.ammonia_capacity_mg_n_per_day >= mg_n_per_day)?;
    Some(found.minute / DAY)
}

/// Mean share of full speed that the water leaves the nitrite oxidisers, from filling to the end, 0 to 1.
pub fn mean_speed_frac(run: &RunResult) -> Option<f64> {
    let (mut minutes, mut sum) = (0.0, 0.0);
    for pair in run.shown().windows(2) {
        let long = f64::from(pair[1].minute - pair[0].minute);
        let both = pair[0].nitrite_oxidiser_speed_frac + pair[1].nitrite_oxidiser_speed_frac;
        minutes += long;
        sum += long * both / 2.0;
    }
    (minutes > 0.0).then(|| sum / minutes)
}

/// Total ammonia that has come into the water up to a day, mg N/L: what is there, and what has been used.
pub fn came_in_mg_n_per_l(run: &RunResult, day: u32) -> Option<f64> {
    let (tally, reading) = (tally(run, day)?, midnight(run, day)?);
    let used_mg: f64 = tally.tan_mg_n.iter().map(|made| (-made).max(0.0)).sum();
    Some(reading.tan_mg_n_per_l + used_mg / reading.volume_l)
}

/// How many times as much of a total is free ammonia one whole step of pH higher.
pub fn per_step_of_ph(reading: &Reading) -> f64 {
    let share = |ph: f64| free_share(reading.temperature_c, ph);
    share(reading.ph + 1.0) / share(reading.ph)
}

/// Free ammonia of the same total at the pH of an evening, mg N/L.
pub fn free_in_the_evening(reading: &Reading) -> f64 {
    reading.tan_mg_n_per_l * free_share(reading.temperature_c, EVENING_PH)
}

/// The reading that opens a day; none where the day lies behind the run.
pub fn midnight(run: &RunResult, day: u32) -> Option<&Reading> {
    let readings = crate::analysis::milestones::readings_of(run, day);
    let is_in_run = day <= run.input.last_day;
    readings.first().copied().filter(|_| is_in_run)
}

fn tally(run: &RunResult, day: u32) -> Option<&Tally> {
    let after = run.tallies.partition_point(|t| t.minute <= day * DAY);
    run.tallies.get(after.checked_sub(1)?)
}
