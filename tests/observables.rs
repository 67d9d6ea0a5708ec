//! The observables a correct run must bring out, each within the band set for it beforehand.
//!
//! Each figure has its source beside it, or "common practice, no source". The defaults were
//! chosen so that most of these come out (a fit, not a validation): 154 parameter sets inside their
//! ranges were tried against the bands, which stayed as they were. What is missed stays listed as
//! missed, so that a silent change shows either way. Run with `--nocapture` to see the table.

mod support;

use support::bands::gases::{algae_and_fish, carbon_dioxide, oxygen};
use support::bands::nitrogen::{alkalinity, nitrogen, plants};
use support::bands::{Check, Checks};
use support::check;

/// The figures that are missed, and left missed: among the sets tried, the best met one more.
const MISSED: [(u32, &str); 7] = [
    // plants that grow slowly on ammonia and hold back the oxidisers; outside the scored bands
    (5, "day of the nitrite peak, no changes with plants and gas"),
    // 6.9: the soil's own respiration pulls a dense tank under 7 at dawn
    (9, "oxygen before lights-on, dense plants"),
    // 1.495: by a hair, at noon, when algae take CO2
    (14, "lowest CO2 without gas, weeks 3 to 6"),
    // 2.94: by a hair, with the valve tuned to 30.0 every day of week 1 (2.06 g of it dissolve)
    (15, "gas to hold 30 mg/L in week 1, g a day"),
    // 0.74: at the nitrite peak, when nitrification takes most alkalinity
    (16, "KH at the end of week 3, weekly changes"),
    // 3.3 with 2 in the tap; cause not looked into
    (17, "nitrate at the end, dense plants"),
    // 0.09: a film would need faster algae, which push noon CO2 further under 1.5 (see 14)
    (18, "algae on day 28, 100 µmol for 8 h"),
];

fn all_checks() -> Vec<Check> {
    let mut checks = Checks::default();
    for part in [
        nitrogen,
        alkalinity,
        plants,
        oxygen,
        carbon_dioxide,
        algae_and_fish,
    ] {
        part(&mut checks);
    }
    checks.0.sort_by_key(|check| check.number);
    checks.0
}

#[test]
fn the_observables_come_out_but_for_the_known_misses() {
    let checks = all_checks();
    for check in &checks {
        let mark = if check.is_met() { " " } else { "×" };
        let (low, high) = check.accept;
        println!(
            "{mark}{:>3}  {:<60} {:>8.3}  {low} to {high}  [{}]",
            check.number, check.what, check.observed, check.source
        );
        assert!(!check.source.is_empty() && check.observed.is_finite());
    }
    let missed: Vec<(u32, &str)> = checks
        .iter()
        .filter(|check| !check.is_met())
        .map(|check| (check.number, check.what))
        .collect();
    assert_eq!(missed, MISSED);
    assert_eq!(checks.len(), 63);
    let mut page = check::Check::of("Figures of a start-up missed, of 63 with a band");
    page.see(missed.len() as f64, "missed");
    page.holds(1);
}
