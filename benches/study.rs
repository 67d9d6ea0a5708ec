//! How long a study takes, how much memory, how much of it is writing.
//!
//! `cargo bench --bench study` runs 100,000 rows of `what-matters.toml` on one thread and on two and prints what it
//! took; `ROWS=1000000` before it chooses another number, `THREADS=2` one number of threads only. Floors on two free
//! cores: 100,000 rows in 60 s, 1,000,000 in 10 minutes, 64 MB whatever the number, writing less than a tenth of
//! computing, two threads 1.8 times one.

use std::fs;
use std::path::Path;
use std::time::{Duration, Instant};

use firstfill::analysis::study::run::{Ran, run};
use firstfill::base::stop::Stop;
use firstfill::output::rows::results::Results;
use firstfill::scenario::study::{Asking, LoadedStudy, load};

const STUDY: &str = "scenarios/studies/what-matters.toml";
/// Rows when nothing is asked.
const ROWS: u64 = 100_000;

fn main() {
    let rows = number("ROWS").unwrap_or(ROWS);
    println!(
        "{:>8} {:>7} {:>9} {:>9} {:>10} {:>9}",
        "rows", "threads", "s", "rows/s", "writing s", "peak MB"
    );
    match number("THREADS") {
        Some(threads) => measure(rows, threads as usize),
        None => [1, 2]
            .into_iter()
            .for_each(|threads| measure(rows, threads)),
    }
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// Runs so many rows of the study, as many members as it takes, and writes them to a file.
fn measure(rows: u64, threads: usize) {
    let loaded = with_rows(rows);
    let pool = rayon::ThreadPoolBuilder::new()
        .num_threads(threads)
        .build()
        .unwrap();
    let room = tempfile::tempdir().unwrap();
    let mut file = fs::File::create(room.path().join("results.csv")).unwrap();
    let results = Results::of(&loaded.study);
    let mut writing = Duration::ZERO;
    let began = Instant::now();
    pool.install(|| {
        run(
            &loaded.study,
            &loaded.family,
            0..rows,
            &Stop::default(),
            |batch: &[Ran]| {
                let began = Instant::now();
                std::io::Write::write_all(&mut file, results.lines(batch).as_bytes())?;
                writing += began.elapsed();
                Ok::<(), std::io::Error>(())
            },
        )
        .unwrap();
    });
    let took = began.elapsed().as_secs_f64();
    let (per_second, writing) = (rows as f64 / took, writing.as_secs_f64());
    println!(
        "{rows:>8} {threads:>7} {took:>9.2} {per_second:>9.0} {writing:>10.3} {:>9.1}",
        peak_mb()
    );
}

fn with_rows(rows: u64) -> LoadedStudy {
    let asking = |members| Asking {
        members,
        seed: None,
    };
    let usual = load(Path::new(STUDY), asking(None)).expect("it ships");
    let members = rows.div_ceil(usual.study.rows_per_member() as u64).max(16);
    load(Path::new(STUDY), asking(Some(members as usize))).expect("it ships")
}

/// The most memory this process has held, MB, where the system tells.
fn peak_mb() -> f64 {
    let status = fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kb: Option<f64> = line.and_then(|line| line.trim().strip_suffix("kB")?.trim().parse().ok());
    kb.unwrap_or(f64::NAN) / 1000.0
}
