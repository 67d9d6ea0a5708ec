//! Two plans pair by pair: in how many of the same tanks the one is ready before the other, and by how much.

use crate::analysis::ensemble::member::Told;
use crate::analysis::levers::paired::Paired;
use crate::base::rounding::beyond_rounding;

use super::strategy::Strategy;

/// One plan against another one.
#[derive(Debug, Clone, PartialEq)]
pub struct Versus {
    /// The plan.
    pub of: usize,
    /// The other one.
    pub against: usize,
    /// Tanks ready before they are with the other plan; also those that never are with it.
    pub before: usize,
    /// Tanks ready after they are with the other plan, or not at all while with that they are.
    pub after: usize,
    /// Tanks ready on the same day both ways.
    pub same_day: usize,
    /// Tanks that are ready within the run neither way.
    pub neither: usize,
    /// The days by which it is ready sooner than the other plan.
    pub paired: Paired,
}

impl Versus {
    /// So many of the pairs, as of 100.
    pub fn of_100(&self, count: usize) -> f64 {
        100.0 * count as f64 / self.paired.pairs.max(1) as f64
    }
    /// Whether no tank is ready within the run, either way.
    pub fn is_never(&self) -> bool {
        self.before + self.after + self.same_day == 0
    }
    /// Whether every tank is ready on the same day both ways, or neither way.
    pub fn is_same(&self) -> bool {
        self.before + self.after == 0
    }
}

/// Every plan against every other one.
pub fn all(strategies: &[Strategy<'_>], last_day: u32) -> Vec<Versus> {
    let places = 0..strategies.len();
    let ordered = places.clone().flat_map(|of| {
        let others = places.clone().filter(move |&against| against != of);
        others.map(move |against| (of, against))
    });
    ordered
        .map(|pair| versus(strategies, pair, last_day))
        .collect()
}

fn versus(strategies: &[Strategy<'_>], (of, against): (usize, usize), last_day: u32) -> Versus {
    let (own, other) = (&strategies[of].members, &strategies[against].members);
    let mut paired = Paired::of(other, own, last_day);
    paired.mean_days = beyond_rounding(paired.mean_days, f64::from(last_day));
    let mut versus = Versus {
        of,
        against,
        before: 0,
        after: 0,
        same_day: 0,
        neither: 0,
        paired,
    };
    for (own, other) in own.iter().zip(other) {
        if let (Ok(own), Ok(other)) = (&own.told, &other.told) {
            versus.count(own, other);
        }
    }
    versus
}

impl Versus {
    fn count(&mut self, own: &Told, other: &Told) {
        let count = match (own.ready.day, other.ready.day) {
            (None, None) => &mut self.neither,
            (None, Some(_)) => &mut self.after,
            (Some(_), None) => &mut self.before,
            (Some(own), Some(other)) if own < other => &mut self.before,
            (Some(own), Some(other)) if own > other => &mut self.after,
            _ => &mut self.same_day,
        };
        *count += 1;
    }
}
