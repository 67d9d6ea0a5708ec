//! One run: from the filled tank through the last day and the look-ahead.

use crate::base::clock::days;
use crate::model::conserved::{FLUXES, QUANTITIES};
use crate::model::processes;

use super::close_ups::CloseUps;
use super::error::RunError;
use super::happening::held;
use super::input::ModelInput;
use super::ledger::{Account, Ledger};
use super::notice::Notice;
use super::plan::Plan;
use super::recorder::{Recorder, crossed};
use super::result::RunResult;
use super::simulation::{Simulation, Watcher};
use super::valve::Valves;
use super::watcher::Eyes;

/// Runs a tank and writes everything down.
///
/// # Errors
/// The first impossible number with its cause, or a ledger that does not close to rounding.
pub fn run(input: &ModelInput) -> Result<RunResult, RunError> {
    run_closely(input, &CloseUps::none())
}

/// The same, looking closely at some days: what is seen there is in [`RunResult::close_ups`] and
/// changes nothing else.
///
/// # Errors
/// Those of [`run`].
pub fn run_closely(input: &ModelInput, closely: &CloseUps) -> Result<RunResult, RunError> {
    run_beside(&Plan::new(input), closely, None)
}

/// The same for a plan, with somebody else looking on.
///
/// # Errors
/// Those of [`run`].
pub fn run_beside(
    plan: &Plan,
    closely: &CloseUps,
    onlooker: Option<&mut dyn Watcher>,
) -> Result<RunResult, RunError> {
    let input = &plan.input;
    let mut recorder = Recorder::new(plan, closely.clone());
    let mut tank = Simulation::filled(plan);
    let mut valves = Valves::new(plan);
    let mut all: Vec<&mut dyn Watcher> = vec![&mut recorder];
    if let Some(onlooker) = onlooker {
        all.push(onlooker);
    }
    let mut eyes = Eyes(&mut all);
    valves.take(&mut tank, input.end_minute(), &mut eyes)?;
    let ledger = closed(&tank)?;
    valves.take(&mut tank, input.final_minute(), &mut eyes)?;
    tank.show(&mut eyes);
    let valve = valves.into_lanes().remove(0);
    let (mut notices, work) = (valve.notices, tank.work(0));
    if work.held_back > 0 {
        notices.push(Notice::HeldBack {
            parts: work.held_back,
        });
    }
    Ok(RunResult {
        input: input.clone(),
        readings: recorder.readings,
        close_ups: recorder.close_ups,
        tallies: recorder.tallies,
        processes: processes::IDS.to_vec(),
        events: recorder.events,
        tunings: valve.tunings,
        ledger,
        notices,
        work,
    })
}

/// The ledger of a tank as it stands, refused if it does not close to rounding.
fn closed(tank: &Simulation<'_>) -> Result<Ledger, RunError> {
    let contents = tank.plan.model.contents();
    let (start, now) = (
        held(contents, &tank.plan.start),
        held(contents, &tank.state),
    );
    let ways = crossed(tank.plan.model.matrix(), &tank.extents, &tank.crossed);
    let accounts = QUANTITIES.iter().enumerate().map(|(place, &quantity)| {
        let mut crossed = [0.0; FLUXES.len()];
        for (way, amount) in crossed.iter_mut().enumerate() {
            *amount = ways[way][place];
        }
        Account {
            quantity,
            start: start[place],
            crossed,
            now: now[place],
        }
    });
    let ledger = Ledger {
        accounts: accounts.collect(),
    };
    match ledger.broken() {
        None => Ok(ledger),
        Some(account) => Err(RunError::LedgerBroken {
            quantity: account.quantity.name(),
            unit: account.quantity.unit(),
            error: account.error(),
            day: days(tank.minute),
        }),
    }
}
