//! How much an input changes the distribution of the output, not its variance alone: good where outputs are censored.
//!
//! Runs are put into slots of equal number by the input; how far the outputs of each slot lie from those of all is the
//! distance of [`distance`] (Pianosi & Wagener 2018, Environ. Model. Softw. 108: 33). Of an
//! input that takes a few values there is a slot for each. One that does nothing still lies [`by_chance`] apart.

use super::bootstrap;
use super::distance::distance;
use super::latin::column;
use crate::base::quantiles::quantile;

/// Inputs that do nothing, by which chance is known; and the runs in which they are tried, at least so many a slot.
const TRIED: u64 = 100;
const RUNS: usize = 2000;
const RUNS_OF_A_SLOT: usize = 20;
/// Where the columns of these inputs begin, behind those of any study; they hang on no seed.
const FIRST: u64 = 1 << 32;
const SEED: u64 = 0;

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
    if slots == 0 || outputs.len() < slots {
        return None;
    }
    let order = order(input, outputs);
    let bounds: Vec<usize> = (0..=slots).map(|slot| slot * order.len() / slots).collect();
    from_all(
        bounds.windows(2).map(|ends| &order[ends[0]..ends[1]]),
        outputs,
    )
}

/// The same with a slot for each value of an input that has a few, whatever their order; none of one value.
///
/// # Panics
/// When an input has not as many values as there are outputs.
pub fn apart_by_value(input: &[f64], outputs: &[f64]) -> Option<Apart> {
    let order = order(input, outputs);
    let slots: Vec<&[usize]> = order.chunk_by(|&a, &b| input[a] == input[b]).collect();
    let has_some = slots.len() > 1;
    from_all(slots.into_iter().filter(|_| has_some), outputs)
}

/// The runs in the order of an input.
fn order(input: &[f64], outputs: &[f64]) -> Vec<usize> {
    assert_eq!(input.len(), outputs.len(), "a value each");
    let mut order: Vec<usize> = (0..input.len()).collect();
    order.sort_by(|&a, &b| input[a].total_cmp(&input[b]));
    order
}

/// How far slots of runs lie from all of them; none of no slot.
fn from_all<'a>(slots: impl Iterator<Item = &'a [usize]>, outputs: &[f64]) -> Option<Apart> {
    let all = in_order(outputs.iter().copied());
    let of_slot = |slot: &[usize]| distance(&in_order(slot.iter().map(|&run| outputs[run])), &all);
    let distances = in_order(slots.map(of_slot));
    Some(Apart {
        most: *distances.last()?,
        median: quantile(&distances, 0.5),
    })
}

/// How far an input that does nothing lies from all.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ByChance {
    /// In the middle of many such inputs.
    pub middle: f64,
    /// Between what it lies, 95 of 100 times.
    pub interval: [f64; 2],
}

/// What an input that does nothing would show in the middle of so many slots: a hundred of them are tried on these very
/// outputs, as results of a few values (yes or no, or all of them late) lie less far apart than others. Distances fall
/// with the root of the runs, so of many runs some are enough. None where a slot would be empty.
pub fn by_chance(outputs: &[f64], slots: usize) -> Option<ByChance> {
    let most = RUNS.max(RUNS_OF_A_SLOT * slots).min(outputs.len());
    let all_alike = |some: &[f64]| some.iter().all(|output| *output == some[0]);
    let some = match &outputs[..most] {
        some if all_alike(some) => outputs,
        some => some,
    };
    let of_one = |input| apart(&column(SEED, FIRST + input, some.len()), some, slots);
    let found: Option<Vec<Apart>> = (0..TRIED).map(of_one).collect();
    let narrower = (some.len() as f64 / outputs.len() as f64).sqrt();
    let all = in_order(found?.into_iter().map(|apart| narrower * apart.median));
    Some(ByChance {
        middle: quantile(&all, 0.5),
        interval: bootstrap::interval(all)?,
    })
}

fn in_order(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut values: Vec<f64> = values.collect();
    values.sort_unstable_by(f64::total_cmp);
    values
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_choice_lies_as_far_apart_in_whatever_order_its_settings_are_listed() {
        // the first of three settings gives 0, the second 1, the third both alike
        let outputs: Vec<f64> = (0..120)
            .map(|run| [0.0, 1.0, f64::from(run / 3 % 2)][run as usize % 3])
            .collect();
        let listed = |order: [f64; 3]| -> Vec<f64> { (0..120).map(|run| order[run % 3]).collect() };
        let found = apart_by_value(&listed([0.0, 1.0, 2.0]), &outputs).unwrap();
        assert_eq!((found.median, found.most), (0.5, 0.5));
        for order in [[2.0, 0.0, 1.0], [1.0, 2.0, 0.0]] {
            assert_eq!(apart_by_value(&listed(order), &outputs), Some(found));
        }
        assert_eq!(apart_by_value(&[1.0; 120], &outputs), None);
    }

    /// The median of Kolmogorov's distribution over the root of the runs in a slot, less since a slot is held against
    /// all, itself among them: nearly what chance shows of many different outputs. From memory.
    ///
    /// ```text
    /// 0.8276·√((1 − 1/slots)/(runs of a slot))
    /// ```
    fn of_kolmogorov(runs: usize, slots: usize) -> f64 {
        let (runs, slots) = (runs as f64, slots as f64);
        0.827_57 * ((slots - 1.0) / runs).sqrt()
    }

    #[test]
    fn a_choice_that_does_nothing_lies_apart_by_chance() {
        // the middle of 200 studies of 1000 runs; its own standard deviation is below a twentieth of it
        for slots in [2_u32, 5] {
            let of = |seed: u64| {
                let [choice, outputs] = [0, 1].map(|input| column(seed, input, 1000));
                let choice: Vec<f64> = choice
                    .iter()
                    .map(|x| (x * f64::from(slots)).floor())
                    .collect();
                apart_by_value(&choice, &outputs).unwrap().median
            };
            let all = in_order((0..200).map(of));
            let middle = quantile(&all, 0.5);
            let off = middle / of_kolmogorov(1000, slots as usize) - 1.0;
            assert!(off.abs() < 0.1, "{slots} settings: {off}");
            let tried = by_chance(&column(1, 1, 1000), slots as usize).unwrap();
            // of a hundred inputs the middle errs by a sixteenth or so
            assert!(
                (tried.middle / middle - 1.0).abs() < 0.2,
                "{slots}: {tried:?}"
            );
            let above = all.iter().filter(|apart| **apart > tried.interval[1]);
            assert!(above.count() < 20, "{slots} settings: {tried:?}");
        }
    }

    #[test]
    fn of_yes_or_no_and_of_many_runs_chance_shows_less() {
        let many = column(1, 1, 20_000);
        let all = by_chance(&many, 10).unwrap().middle;
        assert!((all / of_kolmogorov(20_000, 10) - 1.0).abs() < 0.2, "{all}");
        // a share of a tenth in 2000 runs of a slot errs by √(0.1·0.9·0.9/2000), of which the median is 0.674
        let rare: Vec<f64> = many.iter().map(|x| f64::from(u8::from(*x < 0.1))).collect();
        let found = by_chance(&rare, 10).unwrap().middle;
        let expected = 0.674 * (0.1_f64 * 0.9 * 0.9 / 2000.0).sqrt();
        assert!((found / expected - 1.0).abs() < 0.2, "{found} {expected}");
        assert_eq!(by_chance(&[1.0, 2.0], 3), None);
    }
}
