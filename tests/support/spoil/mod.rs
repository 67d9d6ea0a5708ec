//! Scenarios spoiled by chance: valid files with words, lines and bytes put out of order.
//!
//! Input number `n` of a seed is always the same, on every machine and in any order of asking.

mod corpus;
mod ways;

use firstfill::base::units::{self, Kind};
use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};

pub use corpus::Corpus;

/// Longest spoiled file: thirty times the longest valid one, so that repeats cannot pile up.
const LONGEST: usize = 100_000;

/// A spoiled file: the name it would have (what it is based on lies beside it), and its bytes.
pub struct Spoiled {
    pub name: String,
    pub bytes: Vec<u8>,
}

/// Input number `number` of a seed.
pub fn input(corpus: &Corpus, seed: u64, number: u64) -> Spoiled {
    let chance = &mut chance(seed, number);
    let (name, text) = corpus.file(chance);
    let mut bytes = text.as_bytes().to_vec();
    // mostly one slip, as a person makes; sometimes many
    let slips = if chance.random_ratio(3, 4) {
        1
    } else {
        chance.random_range(2..=6)
    };
    for _ in 0..slips {
        bytes = ways::any(corpus, chance, &bytes);
        bytes.truncate(LONGEST);
    }
    Spoiled {
        name: name.to_string(),
        bytes,
    }
}

/// A kind of quantity, and a text that is nearly one of it.
pub fn quantity(corpus: &Corpus, seed: u64, number: u64) -> (&'static Kind, String) {
    let chance = &mut chance(seed, number);
    let kinds: Vec<&'static Kind> = units::all_kinds().collect();
    let kind = kinds[chance.random_range(0..kinds.len())];
    let word = if chance.random_ratio(3, 4) {
        kind.examples[chance.random_range(0..kind.examples.len())]
    } else {
        corpus.word(chance)
    };
    let mut bytes = word.as_bytes().to_vec();
    for _ in 0..chance.random_range(0..=3) {
        bytes = ways::small(corpus, chance, &bytes);
    }
    (kind, String::from_utf8_lossy(&bytes).into_owned())
}

fn chance(seed: u64, number: u64) -> ChaCha8Rng {
    let mut key = [0; 32];
    key[..8].copy_from_slice(&seed.to_le_bytes());
    key[8..16].copy_from_slice(&number.to_le_bytes());
    ChaCha8Rng::from_seed(key)
}
