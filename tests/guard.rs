//! Nothing falls below zero, and an impossible number ends the run with its cause.

mod support;

use firstfill::engine::error::RunError;
use firstfill::engine::event::Event;
use firstfill::engine::input::{ModelInput, TopUp};
use firstfill::engine::notice::Notice;
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::run::run;
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::model::pool::{POOLS, Pool};
use support::drive::go_on;
use support::greedy::let_loose;
use support::reference;

/// Remembers the lowest amount of any pool that must not be negative.
struct Lowest {
    amount: f64,
    pool: usize,
}

impl Lowest {
    fn new() -> Lowest {
        Lowest {
            amount: 0.0,
            pool: 0,
        }
    }
}

impl Watcher for Lowest {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, _: &Reading, tank: &Simulation<'_>) {
        for pool in (0..POOLS).filter(|&pool| !Pool::at(pool).may_be_negative()) {
            if tank.state.0[pool] < self.amount {
                (self.amount, self.pool) = (tank.state.0[pool], pool);
            }
        }
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}

#[test]
fn no_pool_falls_below_zero_in_any_reference_run_and_nothing_is_held_back() {
    for name in reference::names() {
        let input = reference::input(&name);
        let plan = Plan::new(&input);
        let mut tank = Simulation::filled(&plan);
        let mut lowest = Lowest::new();
        go_on(&mut tank, input.last_day + 1, &mut lowest).unwrap();
        assert_eq!(lowest.amount, 0.0, "{name}: {:?}", Pool::at(lowest.pool));
        assert_eq!(tank.work(0).held_back, 0, "{name}");
    }
}

/// A tank in which several processes would take more than there is within a step.
fn greedy() -> ModelInput {
    let mut input = reference::input("base");
    let_loose(&mut input);
    input.fill.chlorine_mg_cl2_per_l = 0.5;
    input
}

#[test]
fn the_guard_keeps_a_greedy_tank_above_zero_and_its_ledger_closed() {
    let input = greedy();
    let result = run(&input).unwrap();
    assert!(result.work.held_back > 100, "{}", result.work.held_back);
    assert!(result.ledger.worst() < 1e-9, "{:e}", result.ledger.worst());
    let said = result.notices.iter().any(
        |notice| matches!(notice, Notice::HeldBack { parts } if *parts == result.work.held_back),
    );
    assert!(said, "the user is told");
    let plan = Plan::new(&input);
    let mut tank = Simulation::filled(&plan);
    let mut lowest = Lowest::new();
    go_on(&mut tank, 56, &mut lowest).unwrap();
    // a pool emptied by several rows at once may keep a debt of rounding, 1e-16 of what it gave
    assert!(
        lowest.amount > -1e-12,
        "{:?}: {:e}",
        Pool::at(lowest.pool),
        lowest.amount
    );
}

fn impossible(input: &ModelInput) -> (String, String, f64, String) {
    match run(input) {
        Err(error @ RunError::Impossible { .. }) => {
            let words = error.to_string();
            match error {
                RunError::Impossible {
                    process, pool, day, ..
                } => (process, pool, day, words),
                _ => unreachable!(),
            }
        }
        Err(other) => panic!("another error: {other}"),
        Ok(_) => panic!("the run ended as if nothing had happened"),
    }
}

#[test]
fn an_impossible_parameter_ends_the_run_with_its_cause() {
    let mut input = reference::input("base");
    input.parameters = input.parameters.with("k_Fe", f64::NAN);
    let (process, pool, day, words) = impossible(&input);
    assert_eq!((process.as_str(), pool.as_str()), ("iron_loss", "Iron"));
    assert!(
        day <= 60.0 / 1440.0 + 1e-12,
        "found in its first step: {day}"
    );
    assert!(
        words.contains("iron_loss") && words.contains("Iron"),
        "{words}"
    );
}

#[test]
fn an_emptying_tank_ends_the_run_or_keeps_to_possible_numbers() {
    let mut input = reference::input("bare_no_change");
    input.top_up = TopUp::None;
    input.parameters = input.parameters.with("E_act", 30.0).with("heater", 30.0);
    match run(&input) {
        Err(RunError::Impossible { day, inputs, .. }) => {
            assert!(day > 1.0 && day < 20.0, "{day}");
            assert!(inputs.contains(" L,"), "{inputs}");
        }
        Err(other) => panic!("another error: {other}"),
        Ok(result) => {
            let litres: Vec<f64> = result.readings.iter().map(|r| r.volume_l).collect();
            assert!(litres.iter().all(|litres| *litres > 0.0));
            // it cools as it dries, down to where the air takes nothing more
            let [.., day_before, last] = litres[..] else {
                panic!("no readings")
            };
            assert!((last - day_before).abs() < 1e-12 && last < 10.0, "{last} L");
        }
    }
}
