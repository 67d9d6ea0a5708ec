//! How much an input changes the distribution of the output, not its variance alone: good where outputs are censored.
//!
//! Runs are put into slots of equal number by the input; how far the outputs of each slot lie from those of all is the
//! distance of [`distance`] (Pianosi & Wagener 2018, Environ. Model. Softw. 108: 33). An
//! input that does nothing still gives about 0.83/√(runs of a slot); see [`by_chance`].

use super::distance::distance;
use crate::base::quantiles::quantile;

/// How far the slots of an input lie from all.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Apart {
    /// In the middle of the slots.
    pub median: f64,
    /// In the slot that lies furthest.
    pub most: f64,
}

/// Puts runs into so many slots by an input and tells how far these lie apart; none where a slot would be empty.
///
/// # Panics
/// When an input has not as many values as there are outputs.
pub fn apart(input: &[f64], outputs: &[f64], slots: usize) -> Option<Apart> {
    assert_eq!(input.len(), outputs.len(), "a value each");
    if slots == 0 || outputs.len() < slots {
        return None;
    }
    let mut order: Vec<usize> = (0..input.len()).collect();
    order.sort_by(|&a, &b| input[a].total_cmp(&input[b]));
    let all = in_order(outputs.iter().copied());
    let bounds: Vec<usize> = (0..=slots).map(|slot| slot * order.len() / slots).collect();
    let of_slot = |ends: &[usize]| {
        let slot = &order[ends[0]..ends[1]];
        distance(&in_order(slot.iter().map(|&run| outputs[run])), &all)
    };
    let distances = in_order(bounds.windows(2).map(of_slot));
    Some(Apart {
        median: quantile(&distances, 0.5),
        most: distances[slots - 1],
    })
}

/// What an input that does nothing would show in the middle slot, nearly: the median of Kolmogorov's distribution over
/// the root of the runs in a slot.
pub fn by_chance(runs: usize, slots: usize) -> f64 {
    const MEDIAN_OF_KOLMOGOROV: f64 = 0.827_57; // from memory
    MEDIAN_OF_KOLMOGOROV / (runs as f64 / slots as f64).sqrt()
}

fn in_order(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut values: Vec<f64> = values.collect();
    values.sort_unstable_by(f64::total_cmp);
    values
}
