//! Latin hypercubes: as many strata as runs along every input, each met once (McKay et al. 1979, Technometrics 21: 239).
//!
//! Which stratum a run stands in is worked out from its number alone, so that nothing is kept of a million runs. The
//! numbers are shuffled by a Feistel network of four rounds (Luby & Rackoff 1988, SIAM J. Comput. 17: 373) over the
//! least power of four that holds them all; a number that comes out beyond the last is sent through again until it is
//! within (Black & Rogaway 2002, *Ciphers with arbitrary finite domains*). It is a permutation by construction.

use rand::Rng;
use rand::rngs::ChaCha8Rng;

use crate::base::streams::{share, stream};

/// Name of the streams that strata are drawn from.
const NAME: &str = "latin hypercube";
/// Rounds of the network.
const ROUNDS: usize = 4;

/// One input of a hypercube. Each has a stream of its own, so that one more changes no other; another number of runs
/// changes all.
#[derive(Debug, Clone, Copy)]
pub struct Column {
    runs: u64,
    /// Half of the digits that the network shuffles.
    half_bits: u32,
    keys: [u64; ROUNDS],
    within: u64,
}

impl Column {
    /// An input of a hypercube of so many runs.
    pub fn of(seed: u64, input: u64, runs: u64) -> Column {
        let mut chance: ChaCha8Rng = stream(seed, NAME, input);
        let bits = u64::BITS - runs.saturating_sub(1).leading_zeros();
        Column {
            runs,
            half_bits: bits.div_ceil(2).max(1),
            keys: [(); ROUNDS].map(|()| chance.next_u64()),
            within: chance.next_u64(),
        }
    }

    /// Where a run stands, between 0 and 1: anywhere within its stratum.
    ///
    /// # Panics
    /// When there is no such run.
    pub fn at(&self, run: u64) -> f64 {
        assert!(run < self.runs, "run {run} of {}", self.runs);
        let within = share((mixed(run ^ self.within) >> 32) as u32);
        (self.stratum(run) as f64 + within) / self.runs as f64
    }

    fn stratum(&self, run: u64) -> u64 {
        let mut number = self.shuffled(run);
        while number >= self.runs {
            number = self.shuffled(number);
        }
        number
    }

    fn shuffled(&self, number: u64) -> u64 {
        let half = (1 << self.half_bits) - 1;
        let (mut left, mut right) = (number >> self.half_bits, number & half);
        for key in self.keys {
            (left, right) = (right, left ^ (mixed(right ^ key) & half));
        }
        (left << self.half_bits) | right
    }
}

/// Digits mixed up: the finaliser of SplitMix64 (Steele, Lea & Flood 2014, *Fast splittable pseudorandom number
/// generators*).
fn mixed(digits: u64) -> u64 {
    let digits = (digits ^ (digits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let digits = (digits ^ (digits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    digits ^ (digits >> 31)
}

/// One input of a hypercube: where every run stands, from 0 to 1.
pub fn column(seed: u64, input: u64, runs: usize) -> Vec<f64> {
    let column = Column::of(seed, input, runs as u64);
    (0..runs as u64).map(|run| column.at(run)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stratum_is_met_once() {
        for runs in [1, 2, 3, 5, 100, 1000, 1025, 4097] {
            for input in 0..3 {
                let column = column(7, input, runs);
                let at = |place: f64| (runs as f64 * place) as usize;
                let mut strata: Vec<usize> = column.iter().map(|place| at(*place)).collect();
                assert!(runs < 5 || !strata.is_sorted());
                strata.sort_unstable();
                assert!(strata.into_iter().eq(0..runs), "{runs} runs");
            }
        }
        assert_ne!(column(7, 0, 100), column(7, 1, 100));
        assert_ne!(column(7, 0, 100), column(8, 0, 100));
    }

    #[test]
    fn two_inputs_go_along_with_each_other_no_more_than_chance_has_it() {
        // standard deviation of a correlation of n points by chance: 1/√n = 0.01
        let (a, b) = (column(1, 0, 10_000), column(1, 1, 10_000));
        let products = a.iter().zip(&b).map(|(a, b)| (a - 0.5) * (b - 0.5));
        let correlation = products.sum::<f64>() / 10_000.0 * 12.0;
        assert!(correlation.abs() < 0.03, "{correlation}");
        // nor does an input with the number of the run
        let number = |run: usize| run as f64 / 10_000.0 - 0.5;
        let products = a.iter().enumerate().map(|(run, a)| (a - 0.5) * number(run));
        let correlation = products.sum::<f64>() / 10_000.0 * 12.0;
        assert!(correlation.abs() < 0.03, "{correlation}");
    }
}
