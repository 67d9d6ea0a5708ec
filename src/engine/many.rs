//! Many runs: four tanks side by side, groups of four on all threads, results handed over in order.
//!
//! What comes of a tank hangs on its input alone: not on its neighbours, nor on the number of threads
//! (tested). Nothing is kept of a tank but what the caller keeps, so that memory does not grow with the
//! number of runs.

use rayon::prelude::*;

use crate::base::lanes::Lanes;
use crate::base::stop::{Stop, Stopped};

use super::alike::alike;
use super::error::RunError;
use super::input::ModelInput;
use super::plan::Plan;
use super::simulation::{Simulation, Watcher};
use super::valve::{Valve, Valves};
use super::watcher::Eyes;

/// How many tanks stand side by side: as many numbers as one wide register holds.
pub const ABREAST: usize = 4;

/// Numbers of tanks side by side.
pub type Abreast = Lanes<ABREAST>;

/// Groups that one thread works on between two handings over.
const GROUPS_PER_THREAD: usize = 16;

/// What is looked at in each run, and what is kept of it.
pub trait Survey: Sync {
    /// Who looks at four tanks as they go.
    type Watch: Watcher<Abreast>;
    /// What is kept of one tank.
    type Kept: Send;

    /// Somebody to look at the tanks of a plan.
    fn watch(&self, plan: &Plan<Abreast>) -> Self::Watch;

    /// What is kept of a tank that has come to its end.
    fn keep(&self, watch: &Self::Watch, tanks: &Tanks<'_>, lane: usize) -> Self::Kept;
}

/// Four tanks at their end, and their valves.
pub struct Tanks<'a> {
    /// The tanks.
    pub simulation: Simulation<'a, Abreast>,
    /// The valves, with what was set on them.
    pub valves: Vec<Valve<'a>>,
}

/// Runs so many tanks, each through its look-ahead, on the threads of the present pool of `rayon`.
/// `take` gets what was kept of each, in order; a tank whose run failed comes with its cause.
///
/// # Errors
/// When somebody wishes to stop; what was taken by then stands.
pub fn run_many<S: Survey>(
    survey: &S,
    count: usize,
    input: impl Fn(usize) -> ModelInput + Sync,
    stop: &Stop,
    take: impl FnMut(usize, Result<S::Kept, RunError>),
) -> Result<(), Stopped> {
    let group = |group: &[usize]| {
        let inputs: Vec<ModelInput> = group.iter().map(|&member| input(member)).collect();
        run_group(survey, &inputs)
    };
    in_groups(count, group, stop, take)
}

/// Hands members in groups of [`ABREAST`] to all threads, and what came of each to `take`, in order. What
/// `run` gives for a member must hang on that member alone.
///
/// # Errors
/// When somebody wishes to stop; what was taken by then stands.
pub fn in_groups<T: Send>(
    count: usize,
    run: impl Fn(&[usize]) -> Vec<T> + Sync,
    stop: &Stop,
    take: impl FnMut(usize, T),
) -> Result<(), Stopped> {
    in_batches(count, (run, |_: &mut [T]| Ok(())), stop, take)
}

/// The same, and what came of many groups is settled together before it is handed over.
///
/// # Errors
/// When somebody wishes to stop; what was taken by then stands.
pub fn in_batches<T: Send>(
    count: usize,
    (run, settle): (
        impl Fn(&[usize]) -> Vec<T> + Sync,
        impl Fn(&mut [T]) -> Result<(), Stopped>,
    ),
    stop: &Stop,
    mut take: impl FnMut(usize, T),
) -> Result<(), Stopped> {
    let together = ABREAST * GROUPS_PER_THREAD * rayon::current_num_threads();
    for first in (0..count).step_by(together) {
        let members: Vec<usize> = (first..count.min(first + together)).collect();
        let groups: Vec<Vec<T>> = members
            .par_chunks(ABREAST)
            .map(|group| {
                stop.check()?;
                Ok(run(group))
            })
            .collect::<Result<_, Stopped>>()?;
        let mut batch: Vec<T> = groups.into_iter().flatten().collect();
        settle(&mut batch)?;
        for (member, kept) in members.into_iter().zip(batch) {
            take(member, kept);
        }
    }
    Ok(())
}

/// Runs up to four tanks: side by side if they share their times and switches, else one by one.
fn run_group<S: Survey>(survey: &S, inputs: &[ModelInput]) -> Vec<Result<S::Kept, RunError>> {
    fours(&inputs.iter().collect::<Vec<_>>())
        .iter()
        .flat_map(|(four, count)| {
            let plan = Plan::abreast(four).expect("they are alike");
            run_plan(survey, &plan, *count)
        })
        .collect()
}

/// Tanks to be run side by side, and how many of them count: up to four in their order if they share their
/// times and switches, else one by one. Places that are left over hold the last tank again.
pub fn fours<'a>(inputs: &[&'a ModelInput]) -> Vec<([&'a ModelInput; ABREAST], usize)> {
    let last = inputs.len() - 1;
    let four = std::array::from_fn(|lane| inputs[lane.min(last)]);
    match alike(&four) {
        Ok(()) => vec![(four, inputs.len())],
        Err(_) => inputs.iter().map(|&input| ([input; ABREAST], 1)).collect(),
    }
}

fn run_plan<S: Survey>(
    survey: &S,
    plan: &Plan<Abreast>,
    count: usize,
) -> Vec<Result<S::Kept, RunError>> {
    let mut watch = survey.watch(plan);
    match run_through(plan, &mut Eyes(&mut [&mut watch])) {
        Ok(tanks) => (0..count)
            .map(|lane| match &tanks.simulation.failed[lane] {
                Some(why) => Err(why.clone()),
                None => Ok(survey.keep(&watch, &tanks, lane)),
            })
            .collect(),
        Err(failed) => failed.into_iter().take(count).map(Err).collect(),
    }
}

/// Runs four tanks to their end, or gives the cause of each when all have failed.
fn run_through<'a>(
    plan: &'a Plan<Abreast>,
    watch: &mut Eyes<'_, '_, Abreast>,
) -> Result<Tanks<'a>, Vec<RunError>> {
    let mut simulation = Simulation::filled(plan);
    let mut valves = Valves::new(plan);
    if let Err(last) = valves.take(&mut simulation, plan.input.final_minute(), watch) {
        let failed = simulation.failed.into_iter();
        return Err(failed.map(|why| why.unwrap_or(last.clone())).collect());
    }
    simulation.show(watch);
    Ok(Tanks {
        simulation,
        valves: valves.into_lanes(),
    })
}
