//! What the tanks that are ready by a day have in common.

use super::sample::Sample;
use crate::analysis::sensitivity::regional::{Region, region};
use crate::analysis::study::Study;
use crate::analysis::study::input::{Input, Spread};
use crate::analysis::uncertain::shape::{Form, Shape};
use crate::base::maths::{ln, pow};

/// How often chance alone may part any input of a study.
const BY_CHANCE: f64 = 0.05;
/// Bins of a distribution; what lies beyond goes to the outer ones.
const BINS: usize = 16;
/// The places between which an input is drawn.
pub const DRAWN: [f64; 2] = [0.01, 0.99];
/// A spread whose upper end is so many times its lower one is told by factors.
const DECADES_FROM: f64 = 20.0;

/// What the tanks that are ready by a day have in common.
#[derive(Debug, Clone, PartialEq)]
pub struct Regions {
    /// The day.
    pub by_day: u32,
    /// How many of the rows that are kept are ready by then, and how many are not.
    pub rows: [usize; 2],
    /// Inputs that do nothing lie this far apart at most, 95 of 100 times.
    pub by_chance: f64,
    /// Every input, the one that differs most first.
    pub inputs: Vec<Apart>,
}

/// How one input differs between the tanks that are ready and the others.
#[derive(Debug, Clone, PartialEq)]
pub struct Apart {
    /// Which input.
    pub input: usize,
    /// How far apart they lie, and the quarters of both, in the unit of the input.
    pub region: Region,
    /// Ends of the bins, one more than there are bins.
    pub ends: Vec<f64>,
    /// The share of each side in each bin: ready, not.
    pub shares: [Vec<f64>; 2],
}

/// Looks at all inputs; none where the study does not look at the ready day, or all rows are ready, or none.
pub fn of(study: &Study, sample: &Sample) -> Option<Regions> {
    let ready = ready(study, sample)?;
    let count = ready.iter().filter(|ready| **ready).count();
    let rows = [count, ready.len() - count];
    let inputs = study.inputs.iter().enumerate();
    let apart = inputs.map(|(at, input)| apart(input, at, sample, &ready));
    let mut inputs: Vec<Apart> = apart.collect::<Option<_>>()?;
    inputs.sort_by(|a, b| b.region.apart.total_cmp(&a.region.apart));
    let [n, m] = rows.map(|rows| rows as f64);
    Some(Regions {
        by_day: study.ready_by,
        rows,
        by_chance: high_of_kolmogorov(study.inputs.len()) * ((n + m) / (n * m)).sqrt(),
        inputs,
    })
}

impl Regions {
    /// The inputs that differ by more than chance.
    pub fn clear(&self) -> impl Iterator<Item = &Apart> {
        let is_clear = |apart: &&Apart| apart.region.apart > self.by_chance;
        self.inputs.iter().filter(is_clear)
    }
}

/// In 95 of 100 studies no pair of samples of the same, of so many pairs, lies further apart than this over
/// √(n·m/(n + m)): the tail 2·e^(−2·x²) of Kolmogorov's distribution, from memory, shared evenly among the pairs.
fn high_of_kolmogorov(pairs: usize) -> f64 {
    (ln(2.0 * pairs as f64 / BY_CHANCE) / 2.0).sqrt()
}

/// Which rows are ready by the day.
fn ready(study: &Study, sample: &Sample) -> Option<Vec<bool>> {
    let place = |name: &str| study.milestones.iter().position(|one| one.name == name);
    let by = f64::from(study.ready_by);
    let of = |name, is_ready: &dyn Fn(f64) -> bool| {
        let outputs = sample.outputs(place(name)?).into_iter();
        Some(outputs.map(is_ready).collect())
    };
    of("ready_day", &|day| day <= by).or_else(|| of("ready_by", &|is| is > 0.5))
}

fn apart(input: &Input, at: usize, sample: &Sample, ready: &[bool]) -> Option<Apart> {
    let places: Vec<f64> = sample.places(at).collect();
    let of_places = region(&places, ready)?;
    let values = |quarters: [f64; 3]| quarters.map(|place| input.at(place));
    let ends = ends(input);
    let shares = [true, false].map(|side| {
        let rows = places
            .iter()
            .zip(ready)
            .filter(|(_, ready)| **ready == side);
        shares(rows.map(|(place, _)| input.at(*place)), &ends)
    });
    Some(Apart {
        input: at,
        region: Region {
            apart: of_places.apart,
            meeting: values(of_places.meeting),
            others: values(of_places.others),
        },
        ends,
        shares,
    })
}

/// Whether an input is drawn by factors of ten: its spread runs over many, and has no end that stands nearer than
/// nothing, as shares have.
pub fn spans_decades(input: &Input) -> bool {
    let [low, high] = DRAWN.map(|place| input.at(place));
    let has_an_end =
        |shape: &Shape| matches!(shape.form, Form::SplitLogitNormal | Form::Triangular);
    let is_free = match &input.spread {
        Spread::Settings(_) => false,
        Spread::Shape(shape) => !has_an_end(shape),
        Spread::Even { .. } => true,
    };
    is_free && low > 0.0 && high > DECADES_FROM * low
}

/// A bin for each setting; else bins of equal width, or of equal factors.
fn ends(input: &Input) -> Vec<f64> {
    if let Spread::Settings(settings) = &input.spread {
        return (0..=settings.len()).map(|at| at as f64 - 0.5).collect();
    }
    let [low, high] = DRAWN.map(|place| input.at(place));
    let share = |at: usize| at as f64 / BINS as f64;
    let end = |at: usize| match spans_decades(input) {
        true => low * pow(high / low, share(at)),
        false => low + (high - low) * share(at),
    };
    (0..=BINS).map(end).collect()
}

fn shares(values: impl Iterator<Item = f64>, ends: &[f64]) -> Vec<f64> {
    let mut counts = vec![0.0; ends.len() - 1];
    let last = counts.len() - 1;
    let mut all = 0.0;
    for value in values {
        let bin = ends[1..].partition_point(|end| *end <= value).min(last);
        counts[bin] += 1.0;
        all += 1.0;
    }
    counts.into_iter().map(|count| count / all).collect()
}
