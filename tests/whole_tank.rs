//! Whole tanks, eight weeks of them, against a general-purpose library (crate `ivp`, Dormand and
//! Prince's method of eighth order) that integrates the same rates with steps of its own.
//!
//! This holds the scheme against somebody else's: its looks and weights, the first guess of the pH, the
//! grid of steps, a guard that stays silent. Rate laws, rows, switches and what events do are the same
//! code on both sides; that they are right is for the reference runs and the worked state.

mod support;

use firstfill::engine::input::ModelInput;
use firstfill::engine::plan::Plan;
use support::check::Check;
use support::drive::Reach;
use support::peer::{Asked, Method, Peer};
use support::reference;
use support::step_error::{CHARTED, FINEST, Track};

/// What the library may miss in one step, as a share of how far each pool ranges: far below what is
/// looked for.
const TOLERANCE: f64 = 1e-8;
/// In the unit of a pool, for those that stay where they are.
const NEXT_TO_NOTHING: f64 = 1e-12;

/// What the library makes of a tank, at the minutes at which ours was read.
fn by_the_library(input: &ModelInput, minutes: &[u32]) -> Track {
    let plan = Plan::new(input);
    let ranges = Reach::of(&plan).ranges();
    let asked = Asked {
        method: Method::DormandPrince8,
        relative: 0.0,
        absolute: ranges.map(|range| (TOLERANCE * range).max(NEXT_TO_NOTHING)),
    };
    Peer::new(&plan).track(&asked, minutes)
}

/// Holds a reference tank, every part of its steps cut into `finer`, against the row of that name.
fn hold(tank: &str, finer: u32, row: &'static str) {
    let input = reference::input(tank);
    let ours = Track::of(&input, finer);
    let theirs = by_the_library(&input, &ours.minutes());
    let mut check = Check::of(row);
    for ((quantity, _), share) in CHARTED.iter().zip(ours.apart(&theirs)) {
        check.see(share, quantity);
    }
    check.holds(CHARTED.len());
}

#[test]
fn a_planted_tank_goes_as_a_general_purpose_library_has_it() {
    hold(
        "base",
        1,
        "A whole tank, planted, gas, changes: all that charts draw",
    );
}

#[test]
fn a_tank_with_fish_goes_as_a_general_purpose_library_has_it() {
    hold(
        "base_fish",
        1,
        "A whole tank with fish: all that charts draw",
    );
}

#[test]
fn with_short_steps_nothing_is_left_between_the_two() {
    hold(
        "base",
        FINEST,
        "A whole tank, steps 16 times finer: all that charts draw",
    );
}
