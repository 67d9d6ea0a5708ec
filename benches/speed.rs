//! How long runs take on one core: alone, and side by side.
//!
//! `cargo bench --bench speed` prints the table.

#[path = "../tests/support/mod.rs"]
mod support;

use firstfill::base::lanes::Lanes;
use firstfill::engine::plan::Plan;
use firstfill::engine::run::run;
use support::drive::through;

fn main() {
    divan::main();
}

/// 56 days with plants, gas and water changes, everything written down.
#[divan::bench(args = ["bare_no_change", "base", "dense"])]
fn one_run_written_down(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| run(divan::black_box(&input)).unwrap());
}

/// The model only.
#[divan::bench(args = ["bare_no_change", "base", "dense"])]
fn one_run(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    let plan = Plan::new(&input);
    bencher.bench_local(|| through(divan::black_box(&plan)));
}

/// Building the model.
#[divan::bench(args = ["base"])]
fn building(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| Plan::new(divan::black_box(&input)));
}

/// Eight tanks side by side, the model only.
#[divan::bench(args = ["base", "dense"])]
fn eight_abreast(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    let plan = Plan::<Lanes<8>>::abreast(&[&input; 8]).unwrap();
    bencher.bench_local(|| through(divan::black_box(&plan)));
}

/// Four.
#[divan::bench(args = ["base", "dense"])]
fn four_abreast(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    let plan = Plan::<Lanes<4>>::abreast(&[&input; 4]).unwrap();
    bencher.bench_local(|| through(divan::black_box(&plan)));
}
