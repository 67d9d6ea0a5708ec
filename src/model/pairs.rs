//! The entries of a matrix as a step goes through them: two at a time, laid out one behind the other,
//! and pools with few before those with many, so that most need no counting.

use crate::base::real::Real;

use super::matrix::{Entries, PerRow};
use super::pool::POOLS;
use super::state::State;

/// Two entries of one pool.
#[derive(Debug, Clone, Copy)]
struct Pair<R> {
    amounts: [R; 2],
    /// A byte each, so that looking a row up needs no check.
    rows: [u8; 2],
}

impl<R: Real> Pair<R> {
    fn of(two: &[(u8, R)]) -> Self {
        let (row, amount) = two[0];
        let (other_row, other) = two.get(1).copied().unwrap_or((row, R::zero()));
        Pair {
            amounts: [amount, other],
            rows: [row, other_row],
        }
    }
    #[inline(always)]
    fn changes(&self, extents: &PerRow<R>) -> [R; 2] {
        [0, 1].map(|place| self.amounts[place] * extents[usize::from(self.rows[place])])
    }
}

/// Entries in pairs. Where a pool has an odd number, the last has a partner of nothing.
#[derive(Debug, Clone)]
pub struct Pairs<R> {
    /// Pools with one pair.
    ones: Vec<u8>,
    /// Pools with two.
    twos: Vec<u8>,
    /// Pools with more, and how many.
    more: Vec<(u8, u8)>,
    /// The pairs of all, in this order.
    pairs: Vec<Pair<R>>,
}

impl<R: Real> Pairs<R> {
    /// Lays entries out.
    pub fn of(entries: &Entries<R>) -> Self {
        let pairs_of = |pool| entries.of_pool(pool).len().div_ceil(2);
        let with = |count| (0..POOLS).filter(move |&pool| pairs_of(pool) == count);
        let more = || (0..POOLS).filter(move |&pool| pairs_of(pool) > 2);
        let in_order = with(1).chain(with(2)).chain(more());
        Pairs {
            ones: with(1).map(|pool| pool as u8).collect(),
            twos: with(2).map(|pool| pool as u8).collect(),
            more: more()
                .map(|pool| (pool as u8, pairs_of(pool) as u8))
                .collect(),
            pairs: in_order
                .flat_map(|pool| entries.of_pool(pool).chunks(2))
                .map(Pair::of)
                .collect(),
        }
    }

    /// Writes where pools come to by what their entries change together, times a length; pools without
    /// entries are left as they are.
    #[inline(always)]
    pub fn lead(&self, from: &State<R>, extents: &PerRow<R>, length: R, to: &mut State<R>) {
        let (ones, rest) = self.pairs.split_at(self.ones.len());
        for (pool, pair) in self.ones.iter().zip(ones) {
            let [a, b] = pair.changes(extents);
            let pool = usize::from(*pool);
            to.0[pool] = from.0[pool] + (a + b) * length;
        }
        let (twos, mut rest) = rest.split_at(2 * self.twos.len());
        for (pool, [one, other]) in self.twos.iter().zip(twos.as_chunks::<2>().0) {
            let ([a, b], [c, d]) = (one.changes(extents), other.changes(extents));
            let pool = usize::from(*pool);
            to.0[pool] = from.0[pool] + ((a + c) + (b + d)) * length;
        }
        for (pool, count) in &self.more {
            let (own, others) = rest.split_at(usize::from(*count));
            rest = others;
            // two sums side by side: the processor adds to one while the other is under way
            let (mut even, mut odd) = (R::zero(), R::zero());
            for pair in own {
                let [a, b] = pair.changes(extents);
                even += a;
                odd += b;
            }
            let pool = usize::from(*pool);
            to.0[pool] = from.0[pool] + (even + odd) * length;
        }
    }
}
