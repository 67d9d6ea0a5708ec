//! Nothing appears and nothing is lost: every row of every process, and whole runs.
//!
//! Source: conservation of matter and charge. What a row does not put into a pool it must name as
//! leaving the tank. Tolerance of a row: 1e-12 of what it moves, the rounding of some ten terms;
//! of a whole run: 1e-9 of what was there and what crossed, the rounding of 20,000 steps.

mod support;

use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

use firstfill::engine::run::run;
use firstfill::model::conserved::{Flux, QUANTITIES, Quantity};
use firstfill::model::content::Contents;
use firstfill::model::parameter_set::ParameterSet;
use firstfill::model::processes;
use firstfill::model::row::Row;
use firstfill::model::tank_model::TankModel;
use support::check::Check;
use support::planted_tank::{self, Draws};
use support::reference;

/// Rounding of some ten terms, each off by 1e-16 of the largest.
const ROUNDING_OF_A_ROW: f64 = 1e-12;

/// How much of a quantity a row moves, made or used.
fn moved(row: &Row<f64>, contents: &Contents<f64>, quantity: Quantity) -> f64 {
    row.entries
        .iter()
        .filter_map(|(component, amount)| Some(contents.of(*component, quantity)? * amount))
        .map(f64::abs)
        .sum()
}

/// The first quantity that a row makes or loses, with how much.
fn leak(row: &Row<f64>, contents: &Contents<f64>) -> Option<(Quantity, f64)> {
    QUANTITIES.into_iter().find_map(|quantity| {
        let made = row.balance(contents, quantity);
        let allowed = ROUNDING_OF_A_ROW * moved(row, contents, quantity);
        (made.is_nan() || made.abs() > allowed).then_some((quantity, made))
    })
}

/// Sees what every row makes of every quantity, as a share of what it moves of it.
fn see_rows(check: &mut Check, model: &TankModel<f64>, under: &str) {
    for (at, (_, row)) in model.rows().iter().enumerate() {
        for quantity in QUANTITIES {
            let moved = moved(row, model.contents(), quantity);
            if moved > 0.0 {
                let made = row.balance(model.contents(), quantity);
                check.see(made / moved, (model.row_name(at), quantity.name(), under));
            }
        }
    }
}

#[test]
fn every_row_of_every_process_closes_in_all_eight_quantities() {
    let model = planted_tank::model(&ParameterSet::default());
    let mut seen: Vec<usize> = model.rows().iter().map(|(process, _)| *process).collect();
    seen.dedup();
    assert_eq!(
        seen,
        (0..processes::IDS.len()).collect::<Vec<_>>(),
        "every process has a row here"
    );
    let mut check = Check::of("Every row closes in all eight conserved quantities");
    see_rows(&mut check, &model, "default parameters");
    let count = check.count();
    assert!(count > 200, "{count}");
    check.holds(count);
}

#[test]
fn rows_close_whatever_the_parameters_inside_their_ranges() {
    let mut draws = Draws(1);
    let mut check = Check::of("Every row closes under 50 random sets of parameters");
    for set in 0..50 {
        let model = planted_tank::model(&draws.parameters());
        see_rows(&mut check, &model, &format!("set {set}"));
    }
    let count = check.count();
    assert!(count > 50 * 200, "{count}");
    check.holds(count);
}

#[test]
fn only_chlorine_heat_and_the_indicator_move_nothing_that_is_conserved() {
    let model: TankModel<f64> = planted_tank::model(&ParameterSet::default());
    let idle = |at: &usize| {
        let (_, row) = &model.rows()[*at];
        QUANTITIES
            .iter()
            .all(|quantity| moved(row, model.contents(), *quantity) == 0.0)
    };
    let names: Vec<String> = (0..model.rows().len())
        .filter(idle)
        .map(|at| model.row_name(at))
        .collect();
    assert_eq!(names, ["residual_decay (chlorine)", "heat", "indicator"]);
}

#[test]
fn a_row_that_lost_any_one_of_its_entries_is_found_out() {
    let model: TankModel<f64> = planted_tank::model(&ParameterSet::default());
    let contents = model.contents();
    let mut tried = 0;
    for (at, (_, row)) in model.rows().iter().enumerate() {
        for (place, (component, amount)) in row.entries.iter().enumerate() {
            let matters = QUANTITIES.iter().any(|q| {
                contents
                    .of(*component, *q)
                    .is_some_and(|c| c * amount != 0.0)
            });
            if !matters {
                continue;
            }
            let mut wrong = row.clone();
            wrong.entries.remove(place);
            assert!(
                leak(&wrong, contents).is_some(),
                "{} closes even without {component:?}",
                model.row_name(at)
            );
            tried += 1;
        }
    }
    assert!(tried > 200, "only {tried} entries tried");
}

#[test]
fn a_coefficient_wrong_in_its_sixth_digit_is_found_out() {
    let model: TankModel<f64> = planted_tank::model(&ParameterSet::default());
    let growth = model
        .rows()
        .iter()
        .map(|(_, row)| row)
        .find(|row| row.part == "growth")
        .unwrap();
    let mut wrong = growth.clone();
    wrong.entries[1].1 *= 1.0 + 1e-6;
    assert!(leak(growth, model.contents()).is_none());
    assert!(leak(&wrong, model.contents()).is_some());
}

#[test]
fn whole_runs_close_their_budgets() {
    let names = reference::names();
    assert_eq!(names.len(), 17);
    let next = AtomicUsize::new(0);
    let check = Mutex::new(Check::of(
        "Whole runs close their budgets: 17 reference runs",
    ));
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                while let Some(name) = names.get(next.fetch_add(1, Ordering::Relaxed)) {
                    let worst = worst_account(name);
                    check.lock().unwrap().see(worst, name);
                }
            });
        }
    });
    check.into_inner().unwrap().holds(names.len());
}

/// The relative error of the worst account of a run.
fn worst_account(name: &str) -> f64 {
    let result = run(&reference::input(name)).unwrap();
    assert_eq!(result.ledger.accounts.len(), QUANTITIES.len());
    assert_eq!(result.work.held_back, 0, "{name}: nothing was held back");
    let carbon = result.ledger.of(Quantity::Carbon);
    assert!(
        carbon.by(Flux::GasExchange).abs() > 1.0,
        "{name}: the account has something in it"
    );
    let mut forgotten = result.ledger.clone();
    forgotten.accounts[1].crossed[Flux::GasExchange.index()] = 0.0;
    assert!(
        forgotten.broken().is_some(),
        "{name}: a forgotten way out shows"
    );
    result.ledger.worst()
}
