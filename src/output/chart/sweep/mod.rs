//! A grid drawn: of one value the curves along it and the milestones against it; of two a map of one figure with
//! others small in its cells, and maps of several side by side.

mod cells;
mod curves;
mod curves_key;
mod map;
mod map_words;
mod maps;
mod milestones;
mod milestones_series;
mod names;
mod ramp;
mod stair;
pub(super) mod tint;

use crate::analysis::sweep::Sweep;

use super::figure::Figure;

/// The charts of a sweep; `of` are the figures to show, as places in its lines, the main one first.
pub fn figures(sweep: &Sweep, of: &[usize]) -> Vec<Figure> {
    match sweep.axes.len() {
        1 => vec![curves::figure(sweep, of[0]), milestones::figure(sweep, of)],
        _ => vec![map::figure(sweep, of), maps::figure(sweep, of)],
    }
}
