//! How long plans side by side take, with tables and charts.
//!
//! `cargo bench --bench compare` prints the table. Floor on two free cores: four plans on 256 members with charts
//! 3 s. On a busy machine look at the fastest column.

use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::analysis::compare::{Common, Comparison, Entrant};
use firstfill::base::stop::Stop;
use firstfill::output::compare::entries::entries;
use firstfill::output::compare::{Story, Texts};
use firstfill::output::folder::Entry;
use firstfill::scenario;

const PLANS: [&str; 4] = [
    "heavy-early-changes",
    "weekly-changes",
    "no-changes-for-two-weeks",
    "dark-start",
];

fn main() {
    divan::main();
}

fn shipped(name: &str) -> Case {
    let path = format!("scenarios/{name}.toml");
    scenario::load(Path::new(&path)).expect("it ships").case
}

fn written(cases: &[Case], charts: bool) -> Vec<Entry> {
    let named = PLANS.iter().zip(cases);
    let entrants = named.map(|(key, case)| Entrant {
        key: key.to_string(),
        case,
    });
    let entrants: Vec<Entrant<'_>> = entrants.collect();
    let common = Common {
        members: 256,
        seed: 1,
    };
    let stop = Stop::default();
    let comparison = Comparison::of(&entrants, common, &stop, |_, _| {}).unwrap();
    let files = vec![Texts::new(); cases.len()];
    let story = Story {
        comparison: &comparison,
        files: &files,
        options: &[],
    };
    entries(&story, charts, &stop).unwrap()
}

/// Four plans on 256 members, with charts and without.
#[divan::bench(args = [true, false], sample_count = 5, sample_size = 1)]
fn four_plans_with_charts(bencher: divan::Bencher<'_, '_>, charts: bool) {
    let cases = PLANS.map(shipped);
    bencher.bench_local(|| written(divan::black_box(&cases), charts));
}
