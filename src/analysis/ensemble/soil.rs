//! The ammonia a new soil should show in its first two weeks, and what one bag less would change.

use crate::analysis::limits::Limits;
use crate::base::quantiles::quantiles;
use crate::base::real::Real;
use crate::base::stop::{Stop, Stopped};
use crate::engine::error::RunError;
use crate::engine::input::ModelInput;
use crate::engine::many::{Abreast, Survey, Tanks, run_many};
use crate::engine::plan::Plan;

use super::bands::SHARES;
use super::member::{Evenings, Member};
use super::quiet::QuietWatch;

/// The days on which the soil's ammonia is told.
pub const DAYS: [u32; 4] = [1, 3, 7, 14];

/// Total ammonia on the evenings of [`DAYS`] at [`SHARES`] of the members, mg N/L; none past the end of a run.
pub type SoilAmmonia = [Option<[f64; SHARES.len()]>; DAYS.len()];

/// What members show.
pub fn shown(members: &[Member]) -> SoilAmmonia {
    let told = members
        .iter()
        .filter_map(|member| member.told.as_ref().ok());
    over(&told.map(|told| &told.evenings).collect::<Vec<_>>())
}

/// The same of other inputs, of which only the first two weeks are run, without animals. Members that fail
/// are left out.
///
/// # Errors
/// When somebody wishes to stop.
pub fn expected(
    count: usize,
    input: impl Fn(usize) -> ModelInput + Sync,
    stop: &Stop,
) -> Result<SoilAmmonia, Stopped> {
    let mut all = Vec::new();
    let take = |_: usize, evenings: Result<Evenings, RunError>| all.extend(evenings.ok());
    run_many(
        &FirstEvenings,
        count,
        |member| first_weeks(&input(member)),
        stop,
        take,
    )?;
    Ok(over(&all.iter().collect::<Vec<_>>()))
}

/// The same tank with one bag of soil less and the water line where it was, so that water takes the place of
/// the soil; none where less than a bag is in it.
///
/// ```text
/// water = length · width · line − soil − hardscape
/// ```
pub fn one_bag_less(input: &ModelInput, bag_l: f64) -> Option<ModelInput> {
    let mut less = input.clone();
    less.tank.soil_l -= bag_l;
    less.tank.volume_l += bag_l;
    (less.tank.soil_l > 0.0).then_some(less)
}

fn over(evenings: &[&Evenings]) -> SoilAmmonia {
    DAYS.map(|day| {
        let readings = evenings.iter().filter_map(|evenings| evenings.of_day(day));
        let mut tan: Vec<f64> = readings.map(|evening| f64::from(evening.tan)).collect();
        (!tan.is_empty()).then(|| quantiles(&mut tan, &SHARES))
    })
}

fn first_weeks(input: &ModelInput) -> ModelInput {
    let mut short = input.without_animals();
    short.last_day = short.last_day.min(DAYS[DAYS.len() - 1]);
    short.lookahead_days = 0;
    short
}

/// Keeps the evenings.
struct FirstEvenings;

impl Survey for FirstEvenings {
    type Watch = QuietWatch<Abreast>;
    type Kept = Evenings;

    fn watch(&self, plan: &Plan<Abreast>) -> QuietWatch<Abreast> {
        let run = plan.input.filled_at..plan.input.end_minute();
        QuietWatch::new(&Limits::default(), run, Abreast::zero())
    }
    fn keep(&self, watch: &QuietWatch<Abreast>, _: &Tanks<'_>, lane: usize) -> Evenings {
        watch.evenings(lane)
    }
}
