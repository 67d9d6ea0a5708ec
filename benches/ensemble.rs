//! How long many plausible tanks take: with the branches that stock them, and with bands.
//!
//! `cargo bench --bench ensemble` prints the table. Floors on two free cores: 256 members with branches 0.6 s,
//! a thousand members with bands 1.2 s. On a busy machine look at the fastest column.

#[path = "../tests/support/varied.rs"]
mod varied;

use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::analysis::ensemble::{self, Ask, Ensemble};
use firstfill::base::stop::Stop;
use firstfill::scenario;
use varied::member;

fn main() {
    divan::main();
}

fn shipped(name: &str) -> Case {
    let path = format!("scenarios/{name}.toml");
    scenario::load(Path::new(&path)).expect("it ships").case
}

fn ran(case: &Case, members: usize) -> Ensemble {
    let ask = Ask {
        case,
        members,
        drawn_days: &[3, 21],
    };
    let input = |number| member(&case.input, number);
    ensemble::run(ask, input, &Stop::default(), |_, _| {}).unwrap()
}

/// A default run: without animals, and with animals, a twin without them, and branches.
#[divan::bench(args = ["sixty", "handover-in-may", "power-cut"], sample_count = 5, sample_size = 1)]
fn a_default_run_of_256(bencher: divan::Bencher<'_, '_>, name: &str) {
    let case = shipped(name);
    bencher.bench_local(|| ran(divan::black_box(&case), 256));
}

/// A thousand members with bands.
#[divan::bench(args = ["sixty", "handover-in-may"], sample_count = 5, sample_size = 1)]
fn a_thousand_with_bands(bencher: divan::Bencher<'_, '_>, name: &str) {
    let case = shipped(name);
    bencher.bench_local(|| ran(divan::black_box(&case), 1000));
}
