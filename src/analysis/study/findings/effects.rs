//! Elementary effects with the interval of their mean size.

use super::index::{Index, Kind};
use super::members::Member;
use super::sizes::{Size, widest};
use super::sums::Tells;
use crate::analysis::sensitivity::bootstrap;
use crate::analysis::sensitivity::effects::{EffectSums, Measures};

/// Effects of each input, and their sizes in trajectories drawn anew.
#[derive(Debug, Clone)]
pub struct Sums {
    effects: Vec<EffectSums>,
    replicates: Vec<Sizes>,
}

/// Sizes of effects added up.
#[derive(Debug, Clone)]
struct Sizes {
    trajectories: f64,
    of_inputs: Vec<f64>,
}

impl Sums {
    /// Nothing yet.
    pub fn new(inputs: usize, replicates: usize) -> Sums {
        let nothing = Sizes {
            trajectories: 0.0,
            of_inputs: vec![0.0; inputs],
        };
        Sums {
            effects: vec![EffectSums::default(); inputs],
            replicates: vec![nothing; replicates],
        }
    }

    fn mean_sizes(&self) -> Vec<Index> {
        let index = |(at, effects): (usize, &EffectSums)| {
            let again = self.replicates.iter();
            let again = again.map(|sizes| sizes.of_inputs[at] / sizes.trajectories);
            let interval = bootstrap::interval(again.collect());
            Index::new(Kind::MuStar, at, effects.measures().mu_star, interval)
        };
        self.effects.iter().enumerate().map(index).collect()
    }

    fn others(&self, kind: Kind, read: impl Fn(Measures) -> Option<f64>) -> Vec<Index> {
        let effects = self.effects.iter().enumerate();
        let told = effects.filter_map(|(at, effects)| Some((at, read(effects.measures())?)));
        let index = |(at, value)| Index::new(kind, at, value, None);
        told.map(index).collect()
    }
}

impl Tells for Sums {
    fn take(&mut self, member: &Member, milestone: usize, times: &[u8]) {
        let outputs = member.outputs(milestone);
        let places: Vec<&[f64]> = member.places().collect();
        for (replicate, times) in self.replicates.iter_mut().zip(times) {
            replicate.trajectories += f64::from(*times);
        }
        for ([from, to], [before, after]) in places.array_windows().zip(outputs.array_windows()) {
            let Some(input) = (0..from.len()).find(|&at| from[at] != to[at]) else {
                continue;
            };
            let up_by = to[input] - from[input];
            self.effects[input].take(*before, *after, up_by);
            let size = ((after - before) / up_by).abs();
            for (replicate, times) in self.replicates.iter_mut().zip(times) {
                replicate.of_inputs[input] += f64::from(*times) * size;
            }
        }
    }

    fn indices(&self) -> Vec<Index> {
        let mut indices = self.others(Kind::Mu, |measures| Some(measures.mu));
        indices.extend(self.mean_sizes());
        indices.extend(self.others(Kind::Sigma, |measures| measures.sigma));
        indices
    }

    fn size(&self, members: u64) -> Option<Size> {
        let sizes = self.mean_sizes();
        let largest = sizes.iter().map(|index| index.value).fold(0.0, f64::max);
        widest(&sizes, largest, members)
    }
}
