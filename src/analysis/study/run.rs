//! Runs the rows of a study: four tanks side by side on all threads, handed over in the order of their numbers.
//!
//! Nothing is kept of a row but what is handed over, so memory does not grow with their number. Within a batch, rows
//! with the same settings go side by side; what comes of a row hangs on its number alone.

use std::ops::Range;

use rayon::prelude::*;

use crate::base::stop::{Stop, Stopped};
use crate::engine::error::RunError;
use crate::engine::input::ModelInput;
use crate::engine::many::{ABREAST, Abreast, fours};
use crate::engine::plan::Plan;
use crate::engine::simulation::Simulation;
use crate::engine::valve::Valves;
use crate::engine::watcher::Eyes;

use super::family::{Family, Variant};
use super::milestone::Seen;
use super::watch::{Wants, Watch};
use super::{Row, Study};

/// Rows that are run before any of them is handed over: enough for threads to share, few enough for memory, and to
/// lose little when stopped.
pub const BATCH: u64 = 1024;

/// One row that has been run.
#[derive(Debug, Clone, PartialEq)]
pub struct Ran {
    /// Its number and places, and what came of it.
    pub row: Row,
    /// Value of every input: of settings the number, none for what does not vary in its tank.
    pub values: Vec<Option<f64>>,
    /// Why it failed, if it did.
    pub failed: Option<RunError>,
}

/// Why rows were not all run.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Ended<E> {
    /// Somebody wished to stop.
    #[error(transparent)]
    Stopped(#[from] Stopped),
    /// Whoever takes the rows refused one.
    #[error("{0}")]
    Refused(E),
}

/// Runs some rows on the threads of the present pool of `rayon`; `take` gets a batch of them at a time, in order.
///
/// # Errors
/// When somebody wishes to stop, or `take` refuses; what was taken by then stands.
pub fn run<E>(
    study: &Study,
    family: &Family,
    rows: Range<u64>,
    stop: &Stop,
    mut take: impl FnMut(&[Ran]) -> Result<(), E>,
) -> Result<(), Ended<E>> {
    let mut first = rows.start;
    while first < rows.end {
        let last = rows.end.min((first / BATCH + 1) * BATCH);
        let batch = batch(study, family, first..last, stop)?;
        take(&batch).map_err(Ended::Refused)?;
        first = last;
    }
    Ok(())
}

/// A row that is to be run.
struct Due {
    variant: usize,
    places: Vec<f64>,
    values: Vec<Option<f64>>,
}

fn batch(
    study: &Study,
    family: &Family,
    rows: Range<u64>,
    stop: &Stop,
) -> Result<Vec<Ran>, Stopped> {
    let due: Vec<Due> = rows.clone().map(|row| due(study, family, row)).collect();
    let mut order: Vec<usize> = (0..due.len()).collect();
    order.sort_by_key(|&at| due[at].variant);
    let alike = order.chunk_by(|&a, &b| due[a].variant == due[b].variant);
    let groups: Vec<&[usize]> = alike.flat_map(|group| group.chunks(ABREAST)).collect();
    let ran: Vec<Vec<Result<Vec<f64>, RunError>>> = groups
        .par_iter()
        .map(|group| {
            stop.check()?;
            let variant = &family.variants()[due[group[0]].variant];
            let inputs = group.iter().map(|&at| variant.input(&due[at].values));
            Ok(outputs(study, variant, &inputs.collect::<Vec<_>>()))
        })
        .collect::<Result<_, Stopped>>()?;
    let mut told: Vec<(usize, Result<Vec<f64>, RunError>)> =
        order.into_iter().zip(ran.into_iter().flatten()).collect();
    told.sort_unstable_by_key(|(at, _)| *at);
    let all = rows.zip(due).zip(told);
    Ok(all
        .map(|((row, due), (_, told))| ran_row(row, due, told))
        .collect())
}

fn due(study: &Study, family: &Family, row: u64) -> Due {
    let places = study.places(row);
    let variant = family.variant_at(&places);
    let reach = study.method.reach();
    Due {
        values: family.variants()[variant].values(&study.inputs, &places, reach),
        variant,
        places,
    }
}

fn ran_row(number: u64, due: Due, told: Result<Vec<f64>, RunError>) -> Ran {
    let (outputs, failed) = match told {
        Ok(outputs) => (Some(outputs), None),
        Err(why) => (None, Some(why)),
    };
    Ran {
        row: Row {
            number,
            places: due.places,
            outputs,
        },
        values: due.values,
        failed,
    }
}

/// The milestones of up to four tanks.
fn outputs(
    study: &Study,
    variant: &Variant,
    inputs: &[ModelInput],
) -> Vec<Result<Vec<f64>, RunError>> {
    let told = fours(&inputs.iter().collect::<Vec<_>>());
    let told = told.iter().flat_map(|(four, count)| {
        let (seen, failed) = seen(study, variant, four);
        let lanes = seen.into_iter().zip(failed).take(*count);
        lanes.map(|(seen, failed)| match failed {
            Some(why) => Err(why),
            None => Ok(read_off(study, &seen)),
        })
    });
    told.collect()
}

fn read_off(study: &Study, seen: &Seen) -> Vec<f64> {
    let milestones = study.milestones.iter();
    milestones
        .map(|milestone| milestone.of(seen, study.ready_by, study.last_day))
        .collect()
}

type Failed = [Option<RunError>; ABREAST];

/// Four tanks run: as planned to the end of the run, without animals to the end of the look-ahead, where a milestone
/// needs it; at once where no animals are planned.
fn seen(
    study: &Study,
    variant: &Variant,
    four: &[&ModelInput; ABREAST],
) -> ([Seen; ABREAST], Failed) {
    let ripening = study.milestones.iter().any(|one| one.is_of_ripening());
    let figures = study.milestones.iter().any(|one| !one.is_of_ripening());
    let both = Wants { figures, ripening };
    let mut watch = Watch::new(four, &variant.case().limits, both);
    let mut failed = [const { None }; ABREAST];
    if ripening && !four[0].has_animals() {
        through(four, four[0].final_minute(), &mut watch, &mut failed);
    } else {
        if figures {
            watch.wants.ripening = false;
            through(four, four[0].end_minute(), &mut watch, &mut failed);
        }
        if ripening {
            watch.wants = Wants {
                figures: false,
                ripening,
            };
            let without = four.map(ModelInput::without_animals);
            through(
                &without.each_ref(),
                four[0].final_minute(),
                &mut watch,
                &mut failed,
            );
        }
    }
    let seen = std::array::from_fn(|lane| watch.lane(lane, study.last_day));
    (seen, failed)
}

fn through(four: &[&ModelInput; ABREAST], until: u32, watch: &mut Watch, failed: &mut Failed) {
    let plan: Plan<Abreast> = Plan::abreast(four).expect("tanks of one group are alike");
    let mut tanks = Simulation::filled(&plan);
    let mut eyes = Eyes(&mut [watch]);
    let ended = Valves::new(&plan).take(&mut tanks, until, &mut eyes);
    tanks.show(&mut eyes);
    let all = ended.err();
    for (lane, (noted, own)) in failed.iter_mut().zip(tanks.failed).enumerate() {
        let why = own.or_else(|| all.clone());
        let counts = |why: &RunError| !watch.is_settled(why.day(), lane);
        *noted = noted.take().or(why.filter(counts));
    }
}
