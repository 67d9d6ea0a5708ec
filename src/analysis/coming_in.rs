//! What comes in: the ammonia that reaches the water each day, whoever makes it.

use crate::base::clock::{DAY, days};
use crate::engine::event::EventKind;
use crate::engine::result::{RunResult, Tally};

/// The microbes' own loss returns what they took up; it is not a load on them.
const NOT_A_LOAD: &str = "nitrifier_loss";

/// Ammonia that comes in, mg N a day, one value a day at its noon: from every process that makes
/// it, from refills and from doses. A day that begins at filling counts in proportion.
pub fn coming_in(run: &RunResult) -> Vec<(f64, f64)> {
    let start = run.readings.first().map_or(0, |r| r.minute);
    (0..=run.input.last_day)
        .filter_map(|day| {
            let (from, until) = ((day * DAY).max(start), (day + 1) * DAY);
            if from >= until {
                return None;
            }
            let made = made(run, from, until) + brought(run, from, until);
            Some((f64::from(day) + 0.5, made / days(until - from)))
        })
        .collect()
}

/// The last tally up to a minute.
fn tally_at(run: &RunResult, minute: u32) -> Option<&Tally> {
    let after = run.tallies.partition_point(|t| t.minute <= minute);
    run.tallies.get(after.checked_sub(1)?)
}

fn made(run: &RunResult, from: u32, until: u32) -> f64 {
    let Some(end) = tally_at(run, until) else {
        return 0.0;
    };
    let start = tally_at(run, from);
    let made = |n: usize| end.tan_mg_n[n] - start.map_or(0.0, |t| t.tan_mg_n[n]);
    let loads = run.processes.iter().enumerate();
    loads
        .filter(|(_, id)| **id != NOT_A_LOAD)
        .map(|(n, _)| made(n).max(0.0))
        .sum()
}

fn brought(run: &RunResult, from: u32, until: u32) -> f64 {
    let now = |minute: u32| from <= minute && minute < until;
    let refill = run.input.refill.tan_mg_n_per_l;
    let records = run.events.iter().filter(|e| now(e.minute));
    let refilled: f64 = records.map(|e| e.litres * refill).sum();
    let volume = run.input.tank.volume_l;
    let doses = run.input.events.iter().filter(|e| now(e.minute));
    let dosed: f64 = doses
        .map(|event| match &event.kind {
            EventKind::Dose(d) => volume * (d.ammonium_mg_n_per_l + d.ammonia_mg_n_per_l),
            _ => 0.0,
        })
        .sum();
    refilled + dosed
}
