//! Several plans on the same members, as one piece of work: no thread waits for the others between two plans.

use crate::base::stop::{Stop, Stopped};
use crate::engine::input::ModelInput;
use crate::engine::many::{ABREAST, in_batches};

use super::group::{Group, Underway};
use super::member::Member;
use super::stocked::settle;
use super::{Ask, EnsembleError, refuse_too_many_failed};

/// Runs so many plans on the members that are asked for. `input` gives the input of a plan and a member, `done`
/// hears of every member that is done, `take` gets the members of a plan once all of them are; nothing is kept
/// of them here. What comes of a member is what [`super::run`] makes of the same input.
///
/// # Errors
/// When somebody wishes to stop, or more than [`super::MOST_FAILED_FRAC`] of the members of a plan fail.
pub fn run_plans(
    ask: Ask<'_>,
    plans: usize,
    input: impl Fn(usize, usize) -> ModelInput + Sync,
    stop: &Stop,
    done: &mut dyn FnMut(),
    mut take: impl FnMut(usize, Vec<Member>),
) -> Result<(), EnsembleError> {
    // whole groups to each plan, so that those side by side share their times
    let places = ask.members.next_multiple_of(ABREAST).max(ABREAST);
    let group = Group {
        limits: &ask.case.limits,
        drawn: ask.drawn_days,
    };
    let run_group = |numbers: &[usize]| {
        let plan = numbers[0] / places;
        let members = numbers.iter().map(|number| number % places);
        let members = members.filter(|&member| member < ask.members);
        let inputs: Vec<ModelInput> = members.map(|member| input(plan, member)).collect();
        run_some(&group, plan, &inputs, numbers.len())
    };
    let settle = |batch: &mut [(usize, Option<Underway>)]| {
        let mut plans = batch.chunk_by_mut(|a, b| a.0 == b.0);
        plans.try_for_each(|plan| settle_plan(plan, ask, stop))
    };
    let mut members = Vec::with_capacity(ask.members);
    let mut failed = Ok(());
    in_batches(
        plans * places,
        (run_group, settle),
        stop,
        |number, (_, one)| {
            if let Some(one) = one {
                let told = one.ran.map(|(told, _)| told);
                let number = number % places;
                members.push(Member { number, told });
                done();
            }
            if number % places + 1 == places {
                let whole = std::mem::take(&mut members);
                match refuse_too_many_failed(&whole) {
                    Ok(()) => take(number / places, whole),
                    Err(why) if failed.is_ok() => failed = Err(why),
                    Err(_) => {}
                }
            }
        },
    )?;
    failed
}

/// What came of members of a plan, in so many places; the last may hold none.
type Places = Vec<(usize, Option<Underway>)>;

fn run_some(group: &Group<'_>, plan: usize, inputs: &[ModelInput], places: usize) -> Places {
    let ran = match inputs.is_empty() {
        true => Vec::new(),
        false => group.run(inputs),
    };
    let mut ran = ran.into_iter();
    (0..places).map(|_| (plan, ran.next())).collect()
}

/// Stocks the members of one plan; places that hold none stay empty.
fn settle_plan(
    places: &mut [(usize, Option<Underway>)],
    ask: Ask<'_>,
    stop: &Stop,
) -> Result<(), Stopped> {
    let mut all: Vec<Underway> = places
        .iter_mut()
        .filter_map(|(_, one)| one.take())
        .collect();
    settle(&mut all, &ask.case.limits, stop)?;
    for ((_, place), one) in places.iter_mut().zip(all) {
        *place = Some(one);
    }
    Ok(())
}
