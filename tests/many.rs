//! Many runs: what comes of a tank hangs on its input alone.

#[path = "support/many.rs"]
mod many;
mod support;

use std::sync::Mutex;

use firstfill::base::stop::{Stop, Stopped};
use firstfill::engine::error::RunError;
use firstfill::engine::input::ModelInput;
use firstfill::engine::many::run_many;
use many::{Peaks, member, peaks};
use support::reference;

type Kept = Vec<Result<[u64; 4], RunError>>;

/// Runs tanks on so many threads and gives the bits of what was kept, in the order in which it came.
fn run_on(threads: usize, count: usize, input: impl Fn(usize) -> ModelInput + Sync + Send) -> Kept {
    let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
    let kept = Mutex::new(Vec::new());
    pool.unwrap().install(|| {
        let ended = run_many(&Peaks, count, input, &Stop::default(), |number, tank| {
            let mut kept = kept.lock().unwrap();
            assert_eq!(number, kept.len(), "they come in order");
            kept.push(tank.map(|peaks| peaks.map(f64::to_bits)));
        });
        ended.unwrap();
    });
    kept.into_inner().unwrap()
}

fn short() -> ModelInput {
    let mut base = reference::input("base");
    base.last_day = 4;
    base.lookahead_days = 0;
    base
}

#[test]
fn a_tank_has_the_same_bits_on_any_number_of_threads_and_beside_any_neighbours() {
    const COUNT: usize = 203; // three hand-overs of one thread, and a group of three
    let base = short();
    let tank = |number| member(&base, number);
    let one = run_on(1, COUNT, tank);
    assert_eq!(one.len(), COUNT);
    for threads in [2, 3] {
        assert_eq!(run_on(threads, COUNT, tank), one, "{threads} threads");
    }
    // backwards: every tank has other neighbours, another lane and another group
    let mut backwards = run_on(2, COUNT, |number| member(&base, COUNT - 1 - number));
    backwards.reverse();
    assert_eq!(backwards, one);
    assert_eq!(run_on(1, 1, |_| member(&base, 17)), one[17..18]);
    assert_ne!(one[17], one[18], "they differ");
}

#[test]
fn a_tank_that_fails_or_is_unlike_its_neighbours_leaves_them_alone() {
    let base = short();
    let plain = run_on(1, 8, |number| member(&base, number));
    let odd = run_on(2, 8, |number| {
        let mut input = member(&base, number);
        match number {
            2 => input.parameters = input.parameters.with("k_Fe", f64::NAN),
            5 => input.last_day = 3,
            _ => (),
        }
        input
    });
    for number in [0, 1, 3, 4, 6, 7] {
        assert_eq!(odd[number], plain[number], "tank {number}");
    }
    match &odd[2] {
        Err(RunError::Impossible { process, .. }) => assert_eq!(process, "iron_loss"),
        other => panic!("{other:?}"),
    }
    assert!(odd[5].is_ok());
    assert_ne!(odd[5], plain[5]);
}

#[test]
fn when_all_four_fail_each_comes_with_its_own_cause() {
    let base = short();
    let failed = run_on(1, 4, |number| {
        let mut input = base.clone();
        let id = ["k_Fe", "U"][number % 2];
        input.parameters = input.parameters.with(id, f64::NAN);
        input
    });
    let processes: Vec<&str> = failed
        .iter()
        .map(|tank| match tank {
            Err(RunError::Impossible { process, .. }) => process.as_str(),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(processes[0], processes[2]);
    assert_eq!(processes[0], "iron_loss");
    assert_eq!(processes[1], "heat");
}

#[test]
fn a_wish_to_stop_ends_the_work_between_two_groups() {
    let base = short();
    let stop = Stop::default();
    let mut taken = 0;
    let ended = run_many(
        &Peaks,
        100_000,
        |number| member(&base, number),
        &stop,
        |_, _| {
            taken += 1;
            stop.ask();
        },
    );
    assert_eq!(ended, Err(Stopped));
    assert!(taken > 0 && taken < 1000, "{taken}");
}

#[test]
fn statistics_are_those_of_the_tanks() {
    let base = short();
    let [tan, _, _, oxygen] = peaks(&base, 40);
    let each: Vec<f64> = run_on(1, 40, |number| member(&base, number))
        .into_iter()
        .map(|tank| f64::from_bits(tank.unwrap()[0]))
        .collect();
    assert_eq!(tan.count(), 40);
    let mean = each.iter().sum::<f64>() / 40.0;
    assert!((tan.mean() / mean - 1.0).abs() < 1e-14);
    assert_eq!(tan.most(), each.iter().copied().fold(0.0, f64::max));
    assert!(oxygen.least() < oxygen.most());
}
