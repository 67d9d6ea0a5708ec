//! Which figures of a sweep are drawn and said when nobody chooses, and their names for those who do.

use crate::analysis::compare::lines::OF_100;
use crate::analysis::figure_list::FIGURES;
use crate::analysis::sweep::Sweep;
use crate::analysis::sweep::lead::ready_day_leads;
use crate::analysis::sweep::point::READY_OF_100;

/// What leads usually, and what leads where it moves more.
const PEAK: &str = "tan_peak_mg_n_per_l";
const READY: &str = "ready_50_of_100_day";
/// Most figures that are drawn side by side.
pub const MOST: usize = 6;

/// What is looked at when work at the surface is varied.
const OF_AIR: [&str; MOST] = [
    "oxygen_low_mg_per_l",
    "gas_used_g",
    "co2_high_mg_per_l",
    READY,
    "tan_peak_mg_n_per_l",
    "kh_low_dkh",
];
/// What is looked at else.
const USUAL: [&str; MOST] = [
    PEAK,
    "water_changed_l",
    READY,
    "nitrite_peak_mg_n_per_l",
    "oxygen_low_mg_per_l",
    "kh_low_dkh",
];
/// Sections whose values change what goes through the surface.
const AIR: [&str; 3] = ["air.", "gas.", "surface."];
/// Figures of a grid that is drawn as a map.
pub const ON_A_MAP: usize = 3;

/// Most figures that the charts of a grid of so many values show.
pub fn most_drawn(values: usize) -> usize {
    match values {
        1 => MOST,
        _ => ON_A_MAP,
    }
}

/// Names of all figures that can be chosen.
pub fn names() -> Vec<String> {
    let ready = OF_100.map(|of_100| format!("ready_{of_100}_of_100_day"));
    let figures = FIGURES.iter().map(|figure| figure.name.to_string());
    let others = ["visits", "cost", READY_OF_100].map(String::from);
    ready.into_iter().chain(figures).chain(others).collect()
}

/// The figures asked for, or those that tell most of what is varied, as places in the lines of the sweep; of one value
/// the ready day first, where it moves more than the peak of ammonia.
pub fn places(sweep: &Sweep, asked: &[String]) -> Vec<usize> {
    let is_of_air = |path: &str| AIR.iter().any(|section| path.starts_with(section));
    let usual = match sweep.axes.iter().all(|axis| is_of_air(&axis.path)) {
        true => OF_AIR,
        false => USUAL,
    };
    let count = most_drawn(sweep.axes.len());
    let mut names: Vec<&str> = match asked.is_empty() {
        true => usual[..count].to_vec(),
        false => asked.iter().map(String::as_str).collect(),
    };
    if asked.is_empty() && sweep.axes.len() == 1 && usual[0] == PEAK && ready_day_leads(sweep) {
        // the others keep their order
        names.sort_by_key(|name| *name != READY);
    }
    names
        .into_iter()
        .filter_map(|name| sweep.line(name))
        .collect()
}
