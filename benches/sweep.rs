//! How long a grid takes, with its table and charts.
//!
//! `cargo bench --bench sweep` prints the table. Floor on two free cores: 15 × 15 points on 50 members within 10 s. On
//! a busy machine look at the fastest column.

use std::path::Path;

use firstfill::analysis::compare::Common;
use firstfill::analysis::sweep::{Sweep, USUAL_MEMBERS};
use firstfill::base::stop::Stop;
use firstfill::output::folder::Entry;
use firstfill::output::sweep::Story;
use firstfill::output::sweep::entries::entries;
use firstfill::output::sweep::shown;
use firstfill::scenario::{self, Loaded, varied};

const VARY: [&str; 2] = [
    "changes.early.share=10 %..80 %:15",
    "changes.early.every=1..15:15",
];

fn main() {
    divan::main();
}

fn loaded() -> Loaded {
    scenario::load(Path::new("scenarios/sixty.toml")).expect("it ships")
}

fn written(loaded: &Loaded) -> Vec<Entry> {
    let axes = varied::axes(loaded, &VARY.map(String::from)).expect("it can be varied");
    let cases = varied::grid(loaded, &axes).expect("it can be read");
    let common = Common {
        members: USUAL_MEMBERS,
        seed: 1,
    };
    let stop = Stop::default();
    let sweep = Sweep::of(&axes, &cases, common, &stop, |_, _| {}).unwrap();
    let story = Story {
        sweep: &sweep,
        of: &shown::places(&sweep, &[]),
        case: &loaded.case,
        files: &[],
        options: &[],
    };
    entries(&story, true, &stop).unwrap()
}

/// The whole grid: read, run, written and drawn.
#[divan::bench(sample_count = 3, sample_size = 1)]
fn fifteen_by_fifteen_points(bencher: divan::Bencher<'_, '_>) {
    let loaded = loaded();
    bencher.bench_local(|| written(divan::black_box(&loaded)));
}

/// Reading every point of it alone.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn reading_its_points(bencher: divan::Bencher<'_, '_>) {
    let loaded = loaded();
    let axes = varied::axes(&loaded, &VARY.map(String::from)).expect("it can be varied");
    bencher.bench_local(|| varied::grid(divan::black_box(&loaded), &axes).expect("it can be read"));
}
