//! How long a run takes: one 56-day run of the reference tank on one core.
//!
//! `cargo bench` prints the table.

#[path = "../tests/support/mod.rs"]
mod support;

use firstfill::engine::run::run;

fn main() {
    divan::main();
}

/// 56 days with plants, gas and water changes, everything written down.
#[divan::bench(args = ["bare_no_change", "base", "dense"])]
fn one_run(bencher: divan::Bencher<'_, '_>, name: &str) {
    let input = support::reference::input(name);
    bencher.bench_local(|| run(divan::black_box(&input)).unwrap());
}
