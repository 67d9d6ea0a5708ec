//! Amounts over the weeks: each tally with the reading taken at the same instant.

use crate::base::clock::days;
use crate::engine::event::EventKind;
use crate::engine::result::{Reading, RunResult, Side, Tally};
use crate::model::conserved::{Flux, Quantity};
use crate::model::equivalents::MEQ_PER_MG_N;

/// A tally and the reading of the same instant.
#[derive(Debug, Clone, Copy)]
pub struct Account<'a> {
    /// What has crossed and been turned over.
    pub tally: &'a Tally,
    /// What is in the tank.
    pub reading: &'a Reading,
}

impl Account<'_> {
    /// When, in days.
    pub fn at(&self) -> f64 {
        days(self.reading.minute)
    }
    /// What came in (positive) or left (negative) by one way since filling.
    pub fn crossed(&self, flux: Flux, quantity: Quantity) -> f64 {
        RunResult::crossed(self.tally, flux, quantity)
    }
    /// Alkalinity made or used by some processes since filling, meq.
    pub fn alkalinity_by(&self, run: &RunResult, processes: &[&str]) -> f64 {
        let pairs = run.processes.iter().zip(&self.tally.alkalinity_meq);
        pairs
            .filter(|(id, _)| processes.contains(id))
            .map(|(_, meq)| meq)
            .sum()
    }
    /// Alkalinity in the water, meq.
    pub fn alkalinity(&self) -> f64 {
        self.reading.alkalinity_meq_per_l * self.reading.volume_l
    }
}

/// All accounts of the days that are shown.
pub fn accounts(run: &RunResult) -> Vec<Account<'_>> {
    let shown = run.shown();
    let mut all = Vec::new();
    for tally in &run.tallies {
        let from = shown.partition_point(|r| r.minute < tally.minute);
        let same = shown[from..]
            .iter()
            .take_while(|r| r.minute == tally.minute);
        if let Some(reading) = same.into_iter().find(|r| r.side == tally.side) {
            all.push(Account { tally, reading });
        }
    }
    all
}

/// Alkalinity added by what people did up to each account, meq: by refills (less what the changes
/// took out), and by doses.
pub fn added_by_hand(run: &RunResult, all: &[Account<'_>]) -> Vec<(f64, f64)> {
    let (mut refills, mut doses) = (0.0, 0.0);
    let mut sums = Vec::with_capacity(all.len());
    for (n, account) in all.iter().enumerate() {
        if account.reading.side == Side::After && n > 0 {
            let minute = account.reading.minute;
            let dosed = dosed_at(run, minute, account.reading.volume_l);
            doses += dosed;
            if has_change(run, minute) {
                refills += account.alkalinity() - all[n - 1].alkalinity() - dosed;
            }
        }
        sums.push((refills, doses));
    }
    sums
}

fn has_change(run: &RunResult, minute: u32) -> bool {
    let records = run.events.iter().filter(|e| e.minute == minute);
    records.into_iter().any(|e| e.litres > 0.0)
}

/// Alkalinity of the doses of one minute, meq.
fn dosed_at(run: &RunResult, minute: u32, volume_l: f64) -> f64 {
    let events = run.input.events.iter().filter(|e| e.minute == minute);
    events
        .map(|event| match &event.kind {
            EventKind::Dose(dose) => {
                let ammonia = MEQ_PER_MG_N * dose.ammonia_mg_n_per_l;
                volume_l * (dose.bicarbonate_meq_per_l + ammonia)
            }
            _ => 0.0,
        })
        .sum()
}
