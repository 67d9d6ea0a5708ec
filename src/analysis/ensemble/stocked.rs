//! Stocks members when they are ripe: of many groups, those that ask for the same day side by side.
//!
//! A tank is stocked at noon of a day by the clock all four share. Within a group candidates lie days apart,
//! so that three lanes of four would run for nothing; over many groups most days have four. What comes of a
//! member does not hang on those it is stocked with.

use std::sync::Arc;

use rayon::prelude::*;

use crate::analysis::branch::{Branch, EVERY_NOON, Noons, Searched};
use crate::analysis::limits::Limits;
use crate::analysis::ready;
use crate::analysis::ripening::Held;
use crate::analysis::stocking::{Search, Stocked};
use crate::base::stop::{Stop, Stopped};
use crate::engine::error::RunError;
use crate::engine::event::Animals;
use crate::engine::input::ModelInput;
use crate::engine::many::{ABREAST, Abreast, fours};
use crate::engine::moment::Moment;
use crate::engine::plan::Plan;

use super::group::Underway;
use super::member::MemberReady;

/// A member that has run without animals and is to be stocked.
pub(super) struct Waits {
    /// Its plan without animals.
    pub(super) input: ModelInput,
    pub(super) animals: Vec<Animals>,
    /// Its group at every noon, and its lane.
    pub(super) noons: (Arc<Noons<Abreast>>, usize),
    /// From which day on each rule holds without animals.
    pub(super) held: Held,
    pub(super) search: Searched,
}

/// Carries the searches of all members to their ends, and tells their ready days.
///
/// # Errors
/// When somebody wishes to stop.
pub(super) fn settle(batch: &mut [Underway], limits: &Limits, stop: &Stop) -> Result<(), Stopped> {
    loop {
        let same_day = by_day(batch);
        if same_day.is_empty() {
            break;
        }
        let came: Vec<Vec<(usize, Result<Stocked, RunError>)>> = same_day
            .par_iter()
            .map(|(day, members)| {
                stop.check()?;
                Ok(stock(batch, members, *day, limits))
            })
            .collect::<Result<_, Stopped>>()?;
        for (member, came) in came.into_iter().flatten() {
            let waits = batch[member].waits.as_mut().expect(ASKED);
            learn(&mut waits.search, came);
        }
    }
    batch.iter_mut().for_each(tell);
    Ok(())
}

const ASKED: &str = "who asks for a day waits";

/// Members that ask for a day, in groups of at most four that ask for the same.
fn by_day(batch: &[Underway]) -> Vec<(u32, Vec<usize>)> {
    let asks = |one: &Underway| one.waits.as_ref()?.search.as_ref().ok()?.day();
    let all = batch.iter().enumerate();
    let mut asking: Vec<(u32, usize)> = all
        .filter_map(|(member, one)| Some((asks(one)?, member)))
        .collect();
    asking.sort_unstable();
    let days = asking.chunk_by(|a, b| a.0 == b.0);
    days.flat_map(|day| day.chunks(ABREAST))
        .map(|four| (four[0].0, four.iter().map(|(_, member)| *member).collect()))
        .collect()
}

/// Stocks up to four members at noon of a day.
fn stock(
    batch: &[Underway],
    members: &[usize],
    day: u32,
    limits: &Limits,
) -> Vec<(usize, Result<Stocked, RunError>)> {
    let waits: Vec<&Waits> = (members.iter())
        .map(|&member| batch[member].waits.as_ref().expect(ASKED))
        .collect();
    let inputs: Vec<&ModelInput> = waits.iter().map(|waits| &waits.input).collect();
    let mut first = 0;
    let mut came = Vec::new();
    for (four, count) in fours(&inputs) {
        let of: [&Waits; ABREAST] = std::array::from_fn(|lane| waits[first + lane.min(count - 1)]);
        let plan = Plan::abreast(&four).expect("tanks of one four are alike");
        let branch = Branch {
            plan: &plan,
            limits,
            animals: &of.map(|waits| waits.animals.clone()),
        };
        let noons = of.map(|waits| (waits.noons.0.of_day(day).expect(EVERY_NOON), waits.noons.1));
        let stocked = branch.stock(&Moment::gathered(&noons));
        came.extend(members[first..first + count].iter().copied().zip(stocked));
        first += count;
    }
    came
}

fn learn(search: &mut Searched, came: Result<Stocked, RunError>) {
    match (search.as_mut(), came) {
        (Ok(search), Ok(stocked)) => search.learn(stocked),
        (_, Err(why)) => *search = Err(why),
        (Err(_), Ok(_)) => {}
    }
}

/// Tells the ready day of a member that has been stocked.
fn tell(one: &mut Underway) {
    let Some(waits) = one.waits.take() else {
        return;
    };
    match (&mut one.ran, waits.search) {
        (Ok((told, _)), Ok(search)) => {
            told.ready = MemberReady::of(&waits.held, Some(&search), search.last_day());
        }
        (ran, Err(why)) => *ran = Err(why),
        (Err(_), Ok(_)) => {}
    }
}

impl MemberReady {
    /// When a member is ready by what held without animals and, where it was stocked, by the search; what
    /// breaks afterwards is known of stocked ones alone.
    pub(super) fn of(held: &Held, search: Option<&Search>, last_day: u32) -> MemberReady {
        MemberReady {
            day: ready::ready_day(held, search, last_day),
            candidate: held.candidate(last_day),
            quiet_from: Some(held.quiet_from().0).filter(|&day| day <= last_day),
            waited_for: ready::waited_for(held, search, last_day),
            broken_after: search.and_then(Search::found).map(|(_, broken)| broken),
        }
    }
}
