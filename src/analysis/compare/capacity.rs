//! What the microbes of a plan could oxidise, in its central run: day by day, when it first reached what comes in, and
//! what mature medium brought.

use crate::analysis::coming_in::coming_in;
use crate::base::clock::DAY;
use crate::engine::result::{Reading, RunResult};

/// How the paths of entries begin that bring mature medium in.
const SEEDS: &str = "seed.";

/// What the microbes of a central run could oxidise all the way to nitrate.
#[derive(Debug, Clone, PartialEq)]
pub struct Capacity {
    /// The lowest of each whole day from day 0 on, mg N/day; nothing on a day without readings.
    pub of_days_mg_n_per_day: Vec<f64>,
    /// The first day on which it reached what comes in; none when it never did.
    pub reached: Option<u32>,
    /// What mature medium brought; none where there was none.
    pub seeded: Option<Seeded>,
}

/// Mature medium that was put in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seeded {
    /// The day, of several the first.
    pub day: u32,
    /// What the microbes could oxidise more at once, mg N/day; of several the sum.
    pub brought_mg_n_per_day: f64,
}

impl Capacity {
    /// Of a finished run.
    pub fn of(run: &RunResult) -> Capacity {
        let days = 0..=run.input.last_day;
        Capacity {
            of_days_mg_n_per_day: days
                .map(|day| lowest_of_day(run, day).unwrap_or(0.0))
                .collect(),
            reached: reached(run),
            seeded: seeded(run),
        }
    }
    /// The lowest of a day, mg N/day.
    pub fn on(&self, day: u32) -> f64 {
        let of_day = self.of_days_mg_n_per_day.get(day as usize);
        of_day.copied().unwrap_or(0.0)
    }
    /// The day on which the first of two plans reaches what comes in, else the last one of both.
    pub fn common_day(both: &[Capacity; 2]) -> u32 {
        let first = both.iter().filter_map(|one| one.reached).min();
        let days = both.iter().map(|one| one.of_days_mg_n_per_day.len());
        first.unwrap_or(days.min().unwrap_or(0).saturating_sub(1) as u32)
    }
}

/// What both steps could take: the smaller of the two.
fn able(reading: &Reading) -> f64 {
    let Reading {
        ammonia_capacity_mg_n_per_day: ammonia,
        nitrite_capacity_mg_n_per_day: nitrite,
        ..
    } = reading;
    ammonia.min(*nitrite)
}

fn lowest_of_day(run: &RunResult, day: u32) -> Option<f64> {
    let of_day = |reading: &&Reading| (day * DAY..=(day + 1) * DAY).contains(&reading.minute);
    let readings = run.shown().iter().filter(of_day);
    readings.map(able).min_by(f64::total_cmp)
}

/// The first day on which both steps could take what comes in.
fn reached(run: &RunResult) -> Option<u32> {
    let days = coming_in(run).into_iter();
    let mut days = days.map(|(noon, comes)| (noon.floor() as u32, comes));
    let is_able = |day: u32, comes: f64| lowest_of_day(run, day).is_some_and(|able| able >= comes);
    days.find(|&(day, comes)| is_able(day, comes))
        .map(|(day, _)| day)
}

fn seeded(run: &RunResult) -> Option<Seeded> {
    let end = run.input.end_minute();
    let records = run.events.iter().filter(|record| record.minute < end);
    let mut seeds = records
        .filter(|record| record.name.starts_with(SEEDS))
        .peekable();
    let day = seeds.peek()?.minute / DAY;
    let brought = seeds.map(|record| able(&record.after) - able(&record.before));
    Some(Seeded {
        day,
        brought_mg_n_per_day: brought.sum(),
    })
}
