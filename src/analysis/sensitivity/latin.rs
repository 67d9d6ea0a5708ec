//! Latin hypercubes: as many strata as runs along every input, each met once (McKay et al. 1979, Technometrics 21: 239).

use rand::Rng;
use rand::seq::SliceRandom;

use crate::base::streams::{share, stream};

/// Name of the streams that strata are drawn from.
const NAME: &str = "latin hypercube";

/// One input of a hypercube: where every run stands, from 0 to 1. Each input has a stream of its own, so that one
/// more changes no other; another number of runs changes all.
pub fn column(seed: u64, input: u64, runs: usize) -> Vec<f64> {
    let mut chance = stream(seed, NAME, input);
    let mut strata: Vec<usize> = (0..runs).collect();
    strata.shuffle(&mut chance);
    let within = |stratum: usize| (stratum as f64 + share(chance.next_u32())) / runs as f64;
    strata.into_iter().map(within).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stratum_is_met_once() {
        for input in 0..3 {
            let column = column(7, input, 100);
            let mut strata: Vec<usize> = column.iter().map(|at| (100.0 * at) as usize).collect();
            assert!(!strata.is_sorted());
            strata.sort_unstable();
            assert!(strata.into_iter().eq(0..100));
        }
        assert_ne!(column(7, 0, 100), column(7, 1, 100));
    }
}
