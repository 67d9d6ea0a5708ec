//! How long runs take on one core: alone, and side by side.
//!
//! `cargo bench --bench speed` prints the table.

#[path = "../tests/support/many.rs"]
mod many;
#[path = "../tests/support/mod.rs"]
mod support;

use firstfill::analysis::uncertain::Uncertain;
use firstfill::engine::many::{ABREAST, Abreast};
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

/// Four tanks side by side, the model only.
#[divan::bench(args = ["base", "dense"])]
fn four_abreast(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    let plan = Plan::<Abreast>::abreast(&[&input; ABREAST]).unwrap();
    bencher.bench_local(|| through(divan::black_box(&plan)));
}

/// Drawing one member of an ensemble and making its tank.
#[divan::bench]
fn drawing_a_member(bencher: divan::Bencher<'_, '_>) {
    let path = std::path::Path::new("scenarios/handover-in-may.toml");
    let case = firstfill::scenario::load(path).unwrap().case;
    let uncertain = Uncertain::of(&case);
    let mut member = 0;
    bencher.bench_local(|| {
        member += 1;
        uncertain.input(&case, &uncertain.draw(1, member))
    });
}

/// Building four models at once.
#[divan::bench(args = ["base"])]
fn building_four(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| Plan::<Abreast>::abreast(&[divan::black_box(&input); ABREAST]).unwrap());
}

/// A thousand different tanks with streaming statistics, on one thread and on two; divide by a thousand.
#[divan::bench(args = [1, 2], sample_count = 10, sample_size = 1)]
fn a_thousand_runs(bencher: divan::Bencher<'_, '_>, threads: usize) {
    let base = support::reference::input("base");
    let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
    let pool = pool.unwrap();
    bencher.bench_local(|| pool.install(|| many::peaks(divan::black_box(&base), 1000)));
}
