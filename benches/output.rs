//! How long tables, charts and the whole program take.
//!
//! `cargo bench --bench output` prints the table. The whole program writes below the folder of the
//! build. Whatever else the machine does comes on top, so the fastest sample is the one to read.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use divan::{Bencher, black_box};
use firstfill::analysis::case::Case;
use firstfill::analysis::outcome::Outcome;
use firstfill::base::stop::Stop;
use firstfill::output::chart::{self, Figure};
use firstfill::output::folder::{Wanted, entries};
use firstfill::output::manifest::Story;
use firstfill::scenario;

fn main() {
    divan::main();
}

/// Three of the shipped scenarios: the usual one, one without gas, one with fish.
const SCENARIOS: [&str; 3] = [
    "heavy-early-changes",
    "gas-off-few-plants",
    "handover-in-may",
];

fn path_of(name: &str) -> PathBuf {
    let home = Path::new(env!("CARGO_MANIFEST_DIR"));
    home.join("scenarios").join(name).with_extension("toml")
}

fn case_of(name: &str) -> Case {
    scenario::load(&path_of(name))
        .unwrap_or_else(|_| panic!("{name} is a shipped scenario"))
        .case
}

fn figure_of(name: &str) -> Figure {
    let case = case_of("heavy-early-changes");
    let o = Outcome::of(&case).unwrap();
    chart::figures(&o.run, &case, &o.milestones, &o.verdict, None, &[3])
        .into_iter()
        .find(|figure| figure.name == name)
        .unwrap()
}

/// Reading a scenario file.
#[divan::bench(args = SCENARIOS)]
fn loading(bencher: Bencher<'_, '_>, name: &str) {
    let path = path_of(name);
    bencher.bench_local(|| scenario::load(black_box(&path)).is_ok());
}

/// Running and judging; a tank with animals is run twice.
#[divan::bench(args = SCENARIOS)]
fn judging(bencher: Bencher<'_, '_>, name: &str) {
    let case = case_of(name);
    bencher.bench_local(|| Outcome::of(black_box(&case)).unwrap());
}

/// Tables and manifest as bytes, hourly.
#[divan::bench(args = SCENARIOS)]
fn tables(bencher: Bencher<'_, '_>, name: &str) {
    let case = case_of(name);
    let outcome = Outcome::of(&case).unwrap();
    let story = Story {
        case: &case,
        outcome: &outcome,
        forecast: None,
        files: &[],
        options: &[],
    };
    let wanted = Wanted {
        every_minutes: 60,
        charts: false,
        days: vec![],
    };
    bencher.bench_local(|| entries(black_box(&story), &wanted, &Stop::default()).unwrap());
}

/// What goes where on the six charts.
#[divan::bench]
fn laying_out(bencher: Bencher<'_, '_>) {
    let case = case_of("heavy-early-changes");
    let o = Outcome::of(&case).unwrap();
    bencher.bench_local(|| chart::figures(&o.run, &case, &o.milestones, &o.verdict, None, &[3]));
}

/// One chart as text.
#[divan::bench(args = ["weeks", "nitrogen"])]
fn svg(bencher: Bencher<'_, '_>, name: &str) {
    let figure = figure_of(name);
    bencher.bench_local(|| chart::svg(black_box(&figure)));
}

/// The text as a picture.
#[divan::bench(args = ["weeks", "nitrogen"], sample_count = 20)]
fn png(bencher: Bencher<'_, '_>, name: &str) {
    let text = chart::svg(&figure_of(name));
    bencher.bench_local(|| chart::png(black_box(&text)).unwrap());
}

/// The program from start to end, without charts.
#[divan::bench(args = SCENARIOS, sample_count = 50, sample_size = 1)]
fn whole_process_with_tables(bencher: Bencher<'_, '_>, name: &str) {
    bencher.bench_local(|| program(name, &["--no-charts"]));
}

/// The program from start to end, with all charts.
#[divan::bench(args = SCENARIOS, sample_count = 20, sample_size = 1)]
fn whole_process_with_charts(bencher: Bencher<'_, '_>, name: &str) {
    bencher.bench_local(|| program(name, &[]));
}

fn program(name: &str, options: &[&str]) {
    let room = Path::new(env!("CARGO_TARGET_TMPDIR")).join("bench-output");
    let done = Command::new(env!("CARGO_BIN_EXE_firstfill"))
        .arg("run")
        .arg(path_of(name))
        .args(options)
        .args(["--force", "--out"])
        .arg(room.join(name))
        .stdout(Stdio::null())
        .status();
    assert!(done.is_ok_and(|status| status.success()), "{name} runs");
}
