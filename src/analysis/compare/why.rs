//! The facts that decide for or against a plan, gathered from what was run; the words are made elsewhere.

use crate::analysis::levers::paired::Paired;
use crate::analysis::ready::Waiting;

use super::Comparison;
use super::capacity::Capacity;
use super::lines::{Line, Standing};
use super::nitrogen::Nitrogen;
use super::versus::Versus;

/// A limit is told when it is last in so many of 100 tanks, here or there.
const WORTH_TELLING_OF_100: f64 = 10.0;

/// The facts of one plan, beside those of the one it is held against.
#[derive(Debug, Clone, PartialEq)]
pub struct Why<'a> {
    /// The pair: of this plan, against the best of the others.
    pub versus: &'a Versus,
    /// What was last to come right, with the share of the tanks here and there, of 100; the most frequent
    /// first.
    pub waited: Vec<Waited>,
    /// What the microbes could oxidise, here and there.
    pub capacity: [Capacity; 2],
    /// The slowest the nitrite oxidisers get for want of alkalinity, here and there.
    pub slowed: Option<[Slowed; 2]>,
    /// Where the nitrogen went, here and there.
    pub nitrogen: Option<[Nitrogen; 2]>,
    /// The figures in which no plan is better.
    pub best_in: Vec<&'a Line>,
    /// The figures in which no plan is worse.
    pub worst_in: Vec<&'a Line>,
}

/// What was last to come right, and in how many of 100 tanks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Waited {
    /// What; none for those ready from the first day.
    pub waiting: Option<Waiting>,
    /// In so many of 100 with this plan.
    pub of_100: f64,
    /// In so many of 100 with the other one.
    pub there_of_100: f64,
}

/// What alkalinity does to the nitrite oxidisers of a central run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slowed {
    /// The lowest share of their full speed, 0 to 1.
    pub slowest_frac: f64,
    /// The lowest KH, dKH.
    pub lowest_dkh: f64,
}

impl<'a> Why<'a> {
    /// Why a plan wins or loses; none where there is no other.
    pub fn of(comparison: &'a Comparison<'_>, place: usize) -> Option<Why<'a>> {
        let versus = strongest(comparison, place)?;
        let both = [place, versus.against];
        let standing = |wanted: Standing| {
            let lines = comparison.lines.iter();
            lines
                .filter(|line| line.standing(place) == wanted)
                .collect()
        };
        Some(Why {
            versus,
            waited: waited(comparison, both),
            capacity: both.map(|place| Capacity::of(&comparison.strategies[place].outcome.run)),
            slowed: each(both, |place| slowed(comparison, place)),
            nitrogen: each(both, |place| {
                Nitrogen::of(&comparison.strategies[place].outcome.run)
            }),
            best_in: standing(Standing::Best),
            worst_in: standing(Standing::Worst),
        })
    }
}

/// The pair with the other plan that is ready first, by the mean of the days; the first of several.
fn strongest<'a>(comparison: &'a Comparison<'_>, place: usize) -> Option<&'a Versus> {
    let gained = |versus: &&Versus| -> f64 {
        let Paired { mean_days, .. } = versus.paired;
        mean_days
    };
    let pairs = comparison.pairs.iter().filter(|pair| pair.of == place);
    pairs.min_by(|a, b| gained(a).total_cmp(&gained(b)))
}

fn each<T>(places: [usize; 2], of: impl Fn(usize) -> Option<T>) -> Option<[T; 2]> {
    let [here, there] = places;
    Some([of(here)?, of(there)?])
}

fn waited(comparison: &Comparison<'_>, [here, there]: [usize; 2]) -> Vec<Waited> {
    let of_100 = |place: usize, waiting: Option<Waiting>| {
        let curve = &comparison.strategies[place].curve;
        let mut counts = curve.waited_for.iter();
        let count = counts.find(|(known, _)| *known == waiting);
        100.0 * count.map_or(0, |(_, count)| *count) as f64 / curve.members.max(1) as f64
    };
    let own = comparison.strategies[here].curve.waited_for.iter();
    let told = own.map(|&(waiting, _)| Waited {
        waiting,
        of_100: of_100(here, waiting),
        there_of_100: of_100(there, waiting),
    });
    told.filter(|waited| waited.of_100.max(waited.there_of_100) >= WORTH_TELLING_OF_100)
        .collect()
}

fn slowed(comparison: &Comparison<'_>, place: usize) -> Option<Slowed> {
    let alkalinity = comparison.strategies[place].outcome.alkalinity?;
    Some(Slowed {
        slowest_frac: alkalinity.slowest.value,
        lowest_dkh: alkalinity.lowest_dkh.value,
    })
}
