//! Whatever is written in a scenario, the program answers: with a tank that runs, or with problems
//! in words. Never a panic, never a wait, never a screen full of control signs.
//!
//! The quick tests read the first few thousand inputs of one seed. The long run reads a million of
//! another and takes its numbers from the environment (DEVELOPERS.md says how).

#[path = "support/spoil/mod.rs"]
mod spoil;
#[path = "support/trial.rs"]
mod trial;

use std::sync::LazyLock;

use firstfill::base::units;
use firstfill::base::units::quantity;

use spoil::Corpus;
use trial::Depth;

/// Seed of the quick tests; the long run takes others.
const SEED: u64 = 1;

static CORPUS: LazyLock<Corpus> = LazyLock::new(Corpus::of_the_project);

#[test]
fn a_spoiled_scenario_is_read_or_refused_in_words() {
    let tally = trial::each(&CORPUS, SEED, 0..4000, |_| Depth::Read);
    println!("{tally}");
    // else the mutations have become too wild or too tame to find anything
    let share = tally.accepted as f64 / tally.read as f64;
    assert!((0.1..0.6).contains(&share), "{tally}");
}

#[test]
fn a_spoiled_scenario_that_is_accepted_runs() {
    let tally = trial::each(&CORPUS, SEED, 4000..4300, |_| Depth::TwoDays);
    println!("{tally}");
    assert!(tally.run > 50, "{tally}");
}

#[test]
fn a_spoiled_scenario_that_is_accepted_is_judged_and_written() {
    let whole = |number| [Depth::Folder, Depth::Read, Depth::Read][(number % 3) as usize];
    let tally = trial::each(&CORPUS, SEED, 4300..4330, whole);
    println!("{tally}");
    assert!(tally.run > 2, "{tally}");
}

#[test]
fn a_text_that_is_nearly_a_quantity_is_read_or_refused() {
    let read = (0..2000)
        .filter(|&number| is_quantity(SEED, number))
        .count();
    println!("{read} of 2000 read");
    // else the mutations have become too wild or too tame to find anything
    assert!((400..1600).contains(&read), "{read}");
}

/// Whether input number `number` is read as the quantity that it nearly is.
fn is_quantity(seed: u64, number: u64) -> bool {
    let (kind, text) = spoil::quantity(&CORPUS, seed, number);
    let Ok(value) = quantity::read(&text, kind) else {
        return false;
    };
    assert!(!value.is_nan(), "{text:?} is no number as {}", kind.name);
    assert!(!units::digits(value).is_empty());
    true
}

/// A number from the environment.
fn asked(name: &str, usual: u64) -> u64 {
    std::env::var(name).map_or(usual, |text| text.parse().expect("a whole number"))
}

#[test]
#[ignore = "takes minutes: cargo test --release --test fuzz -- --ignored --nocapture"]
fn a_million_spoiled_scenarios() {
    let (seed, from) = (asked("SEED", 2), asked("FROM", 0));
    let until = from + asked("INPUTS", 1_000_000);
    let depth = |number: u64| {
        if number.is_multiple_of(10_000) {
            Depth::Charts
        } else if number.is_multiple_of(500) {
            Depth::Folder
        } else if number.is_multiple_of(10) {
            Depth::TwoDays
        } else {
            Depth::Read
        }
    };
    let tally = trial::watched(seed, from..until, depth);
    println!("{tally}");
    assert!(tally.finds.is_empty(), "{:?}", tally.finds);
}

#[test]
#[ignore = "takes minutes: cargo test --release --test fuzz -- --ignored --nocapture"]
fn a_million_quantities() {
    let (seed, from) = (asked("SEED", 2), asked("FROM", 0));
    let until = from + asked("INPUTS", 1_000_000);
    let read = (from..until)
        .filter(|&number| is_quantity(seed, number))
        .count();
    println!("{read} quantities read out of {} texts", until - from);
}
