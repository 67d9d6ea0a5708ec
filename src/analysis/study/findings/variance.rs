//! Shares of the variance with their intervals.

use super::index::{Index, Kind};
use super::members::Member;
use super::sizes::{Size, widest};
use super::sums::Tells;
use crate::analysis::sensitivity::bootstrap;
use crate::analysis::sensitivity::saltelli::Design;
use crate::analysis::sensitivity::variance::{Shares, VarianceSums};

/// Pairs have intervals in designs of no more inputs than this; they take a replicate's memory and time to its square.
const PAIRS_TOO: usize = 32;

/// Sums over the points of a design, and over its points drawn anew.
#[derive(Debug, Clone)]
pub struct Sums {
    design: Design,
    of_replicates: Design,
    first_factor: usize,
    exact: VarianceSums,
    replicates: Vec<VarianceSums>,
}

impl Sums {
    /// Nothing yet; shares are about the factors from a first one on.
    pub fn new(design: Design, first_factor: usize, replicates: usize) -> Sums {
        let of_replicates = Design {
            second_order: design.second_order && design.inputs <= PAIRS_TOO,
            ..design
        };
        Sums {
            design,
            of_replicates,
            first_factor,
            exact: VarianceSums::new(design),
            replicates: vec![VarianceSums::new(of_replicates); replicates],
        }
    }

    /// A number about each input, with the interval of the same number of all replicates.
    fn shares(&self, kind: Kind, read: impl Fn(&Shares) -> f64) -> Vec<Index> {
        let of_all: Vec<Vec<Shares>> = self.replicates.iter().map(VarianceSums::shares).collect();
        let exact = self.exact.shares();
        let index = |(at, shares): (usize, &Shares)| {
            let again = of_all.iter().map(|shares| read(&shares[at])).collect();
            let interval = bootstrap::interval(again);
            Index::new(kind, self.first_factor + at, read(shares), interval)
        };
        exact.iter().enumerate().map(index).collect()
    }

    fn pairs(&self) -> Vec<Index> {
        let of_all = self.replicates.iter().map(VarianceSums::second_order);
        let of_all: Vec<_> = of_all.filter(|pairs| !pairs.is_empty()).collect();
        let pairs = self.exact.second_order().into_iter().enumerate();
        let index = |(at, (j, k, value)): (usize, (usize, usize, f64))| {
            let again = of_all.iter().map(|pairs| pairs[at].2).collect();
            let interval = bootstrap::interval(again);
            Index {
                other: Some(self.first_factor + k),
                ..Index::new(Kind::Second, self.first_factor + j, value, interval)
            }
        };
        pairs.map(index).collect()
    }

    /// The rows that replicates look at.
    fn without_pairs<'a>(&self, outputs: &'a [f64], room: &'a mut Vec<f64>) -> &'a [f64] {
        if self.of_replicates == self.design {
            return outputs;
        }
        room.extend_from_slice(&outputs[..=self.design.inputs]);
        room.push(outputs[outputs.len() - 1]);
        room
    }
}

impl Tells for Sums {
    fn take(&mut self, member: &Member, milestone: usize, times: &[u8]) {
        let outputs = member.outputs(milestone);
        self.exact.take(&outputs, 1.0);
        let mut room = Vec::new();
        let rows = self.without_pairs(&outputs, &mut room);
        let drawn = self.replicates.iter_mut().zip(times);
        for (sums, &times) in drawn.filter(|(_, times)| **times > 0) {
            sums.take(rows, f64::from(times));
        }
    }

    fn indices(&self) -> Vec<Index> {
        let mut indices = self.shares(Kind::First, |shares| shares.first);
        indices.extend(self.shares(Kind::Total, |shares| shares.total));
        indices.extend(self.shares(Kind::Together, |shares| shares.total - shares.first));
        indices.extend(self.pairs());
        indices
    }

    fn size(&self, members: u64) -> Option<Size> {
        let totals = self.shares(Kind::Total, |shares| shares.total);
        widest(&totals, 1.0, members)
    }
}
