//! Ranks and distances over the rows that are kept.

use super::index::{Index, Kind};
use super::sample::Sample;
use super::sizes::{Size, told_up_to, widest};
use crate::analysis::sensitivity::pawn::{Apart, ByChance};
use crate::analysis::sensitivity::{pawn, rank};
use crate::analysis::study::Study;
use crate::analysis::study::input::{Input, Spread};

/// Slots of equal number, at most, into which rows are put, and the least rows of a slot.
const SLOTS: usize = 10;
const LEAST_IN_A_SLOT: usize = 20;

/// Partial rank correlation and distance of each input.
pub fn indices(study: &Study, sample: &Sample, milestone: usize) -> Vec<Index> {
    let levels = levels(study, sample);
    let outputs = sample.outputs(milestone);
    let mut indices = ranks(&levels, &outputs);
    if outputs.iter().all(|output| *output == outputs[0]) {
        return indices;
    }
    let mut chance: Vec<(usize, Option<ByChance>)> = Vec::new();
    for (at, (input, levels)) in study.inputs.iter().zip(&levels).enumerate() {
        let Some((apart, slots)) = apart(input, levels, &outputs) else {
            continue;
        };
        if !chance.iter().any(|(known, _)| *known == slots) {
            chance.push((slots, pawn::by_chance(&outputs, slots)));
        }
        let by_chance = chance.iter().find(|(known, _)| *known == slots);
        if let Some((_, Some(by_chance))) = by_chance {
            let interval = Some(by_chance.interval);
            indices.push(Index::new(Kind::Pawn, at, apart.median, None));
            indices.push(Index::new(
                Kind::PawnByChance,
                at,
                by_chance.middle,
                interval,
            ));
        }
    }
    indices
}

/// How far an input moves the output, and over how many slots; of a choice whose settings have rows enough there is a
/// slot for each. None of too few rows.
fn apart(input: &Input, levels: &[f64], outputs: &[f64]) -> Option<(Apart, usize)> {
    let most = outputs.len() / LEAST_IN_A_SLOT;
    if let Spread::Settings(settings) = &input.spread
        && settings.len() <= most
    {
        return Some((pawn::apart_by_value(levels, outputs)?, settings.len()));
    }
    let slots = SLOTS.min(most);
    let apart = pawn::apart(levels, outputs, slots).filter(|_| slots > 1)?;
    Some((apart, slots))
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
