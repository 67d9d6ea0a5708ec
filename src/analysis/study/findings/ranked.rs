//! Ranks and distances over the rows that are kept.

use super::index::{Index, Kind};
use super::sample::Sample;
use super::sizes::{Size, told_up_to, widest};
use crate::analysis::sensitivity::{pawn, rank};
use crate::analysis::study::Study;

/// Slots of equal number into which rows are put, and the least rows of a slot.
const SLOTS: usize = 10;
const LEAST_IN_A_SLOT: usize = 20;

/// Partial rank correlation and distance of each input.
pub fn indices(study: &Study, sample: &Sample, milestone: usize) -> Vec<Index> {
    let levels = levels(study, sample);
    let outputs = sample.outputs(milestone);
    let mut indices = ranks(&levels, &outputs);
    let slots = SLOTS.min(outputs.len() / LEAST_IN_A_SLOT);
    if slots < 2 || outputs.iter().all(|output| *output == outputs[0]) {
        return indices;
    }
    let by_chance = pawn::by_chance(outputs.len(), slots);
    for (input, levels) in levels.iter().enumerate() {
        if let Some(apart) = pawn::apart(levels, &outputs, slots) {
            indices.push(Index::new(Kind::Pawn, input, apart.median, None));
            indices.push(Index::new(Kind::PawnByChance, input, by_chance, None));
        }
    }
    indices
}

/// How sure the ranks are, of the first rows more and more.
pub fn sizes(study: &Study, sample: &Sample, milestone: usize) -> Vec<Size> {
    let of = |rows: u64| {
        let first = sample.first(rows as usize);
        let ranks = ranks(&levels(study, &first), &first.outputs(milestone));
        widest(&ranks, 1.0, rows)
    };
    let sizes = told_up_to(sample.rows() as u64).into_iter();
    sizes.filter_map(of).collect()
}

fn levels(study: &Study, sample: &Sample) -> Vec<Vec<f64>> {
    let inputs = study.inputs.iter().enumerate();
    inputs.map(|(at, input)| sample.levels(input, at)).collect()
}

/// Partial rank correlations of the inputs that change.
fn ranks(levels: &[Vec<f64>], outputs: &[f64]) -> Vec<Index> {
    let changes = |at: &usize| levels[*at].iter().any(|level| *level != levels[*at][0]);
    let inputs: Vec<usize> = (0..levels.len()).filter(changes).collect();
    let columns: Vec<Vec<f64>> = inputs.iter().map(|&at| levels[at].clone()).collect();
    let Some(ranks) = rank::partial(&columns, outputs) else {
        return Vec::new();
    };
    let index = |(input, rank): (usize, f64)| {
        let interval = rank::interval(rank, outputs.len(), columns.len());
        Index::new(Kind::Rank, input, rank, interval)
    };
    inputs.into_iter().zip(ranks).map(index).collect()
}
