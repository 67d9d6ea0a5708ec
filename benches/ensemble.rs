//! How long many plausible tanks take: with the branches that stock them, and with bands.
//!
//! `cargo bench --bench ensemble` prints the table. Floors on two free cores: 256 members with branches 0.6 s,
//! a thousand members with bands 1.2 s. On a busy machine look at the fastest column.

use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::analysis::ensemble::{self, Ask, Ensemble};
use firstfill::analysis::forecast::{Forecast, Making, USUAL_MEMBERS, USUAL_SEED};
use firstfill::analysis::uncertain::Uncertain;
use firstfill::base::stop::Stop;
use firstfill::scenario;

/// Days whose bands are drawn by the hour.
const DRAWN: [u32; 2] = [3, 21];

fn main() {
    divan::main();
}

fn shipped(name: &str) -> Case {
    let path = format!("scenarios/{name}.toml");
    scenario::load(Path::new(&path)).expect("it ships").case
}

fn forecast(case: &Case) -> Forecast {
    let making = Making {
        members: USUAL_MEMBERS,
        seed: USUAL_SEED,
        drawn_days: &DRAWN,
    };
    Forecast::of(case, making, &Stop::default(), |_, _| {}).unwrap()
}

fn banded(case: &Case, members: usize) -> Ensemble {
    let ask = Ask {
        case,
        members,
        drawn_days: &DRAWN,
    };
    let uncertain = Uncertain::of(case);
    let input = |number| uncertain.input(case, &uncertain.draw(USUAL_SEED, number));
    ensemble::run(ask, input, &Stop::default(), |_, _| {}).unwrap()
}

/// All that a default run computes: without animals; and with animals, a twin without them, and branches.
#[divan::bench(args = ["sixty", "heavy-early-changes", "handover-in-may", "power-cut"], sample_count = 5, sample_size = 1)]
fn a_default_run_of_256(bencher: divan::Bencher<'_, '_>, name: &str) {
    let case = shipped(name);
    bencher.bench_local(|| forecast(divan::black_box(&case)));
}

/// A thousand members with bands.
#[divan::bench(args = ["sixty", "heavy-early-changes", "handover-in-may"], sample_count = 5, sample_size = 1)]
fn a_thousand_with_bands(bencher: divan::Bencher<'_, '_>, name: &str) {
    let case = shipped(name);
    bencher.bench_local(|| banded(divan::black_box(&case), 1000));
}
