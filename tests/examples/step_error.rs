//! Prints how far the default step is from one sixteen times finer: every shipped scenario, two hard
//! tanks, and the worst of 150 random tanks.
//!
//! `cargo run --release --example step_error`

#[path = "../support/random_tank.rs"]
#[allow(dead_code)]
mod random_tank;
#[path = "../support/step_error.rs"]
#[allow(dead_code)]
mod step_error;

use step_error::{Shares, of_default_step, shipped, worst};

/// How many random tanks are tried.
const RANDOM_TANKS: u64 = 150;
/// Days of a run.
const DAYS: u32 = 56;

fn main() {
    println!("| Tank | worst quantity | off by, % of its range |");
    println!("|---|---|---|");
    for (name, case) in shipped() {
        line(&name, &of_default_step(&case.input));
    }
    let mut errors: Vec<(u64, Shares)> = (0..RANDOM_TANKS)
        .map(|number| (number, of_default_step(&random_tank::tank(number, DAYS))))
        .collect();
    errors.sort_by(|a, b| worst(&b.1).1.total_cmp(&worst(&a.1).1));
    let (number, shares) = &errors[0];
    line(
        &format!("worst of {RANDOM_TANKS} random tanks (number {number})"),
        shares,
    );
    line("the middle one of them", &errors[errors.len() / 2].1);
}

fn line(name: &str, shares: &Shares) {
    let (quantity, share) = worst(shares);
    println!("| {name} | {quantity} | {:.1e} |", 100.0 * share);
}
