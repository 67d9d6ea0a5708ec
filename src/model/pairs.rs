//! The entries of a matrix as a step goes through them: two at a time, laid out one behind the other,
//! and pools with few before those with many, so that most need no counting.

use crate::base::real::Real;

use super::entries::Entries;
use super::matrix::PerRow;
use super::pool::POOLS;
use super::state::State;

/// Entries in pairs. Where a pool has an odd number, the last has a partner of nothing.
#[derive(Debug, Clone)]
pub struct Pairs<R> {
    /// Pools with one pair.
    ones: Vec<u8>,
    /// Pools with two.
    twos: Vec<u8>,
    /// Pools with more, and how many.
    more: Vec<(u8, u8)>,
    /// The amounts of all, in this order.
    amounts: Vec<[R; 2]>,
    /// Their rows; a byte each, so that looking one up needs no check.
    rows: Vec<[u8; 2]>,
}

impl<R: Real> Pairs<R> {
    /// Lays entries out.
    pub fn of(entries: &Entries<R>) -> Self {
        let pairs_of = |pool| entries.of_pool(pool).len().div_ceil(2);
        let with = |count| (0..POOLS).filter(move |&pool| pairs_of(pool) == count);
        let more = || (0..POOLS).filter(move |&pool| pairs_of(pool) > 2);
        let in_order = with(1).chain(with(2)).chain(more());
        let pairs = in_order.flat_map(|pool| entries.of_pool(pool).chunks(2));
        let (amounts, rows) = pairs.map(pair).unzip();
        Pairs {
            ones: with(1).map(|pool| pool as u8).collect(),
            twos: with(2).map(|pool| pool as u8).collect(),
            more: more()
                .map(|pool| (pool as u8, pairs_of(pool) as u8))
                .collect(),
            amounts,
            rows,
        }
    }

    /// Writes where pools come to by what their entries change together, times a length; pools without
    /// entries are left as they are.
    #[inline(always)]
    pub fn lead(&self, from: &State<R>, extents: &PerRow<R>, length: R, to: &mut State<R>) {
        let (one_amounts, amounts) = self.amounts.split_at(self.ones.len());
        let (one_rows, rows) = self.rows.split_at(self.ones.len());
        for ((pool, amounts), rows) in self.ones.iter().zip(one_amounts).zip(one_rows) {
            let [a, b] = changes(amounts, rows, extents);
            let pool = usize::from(*pool);
            to.0[pool] = from.0[pool] + (a + b) * length;
        }
        let (two_amounts, mut amounts) = amounts.split_at(2 * self.twos.len());
        let (two_rows, mut rows) = rows.split_at(2 * self.twos.len());
        let twos = (two_amounts.as_chunks::<2>().0.iter()).zip(two_rows.as_chunks::<2>().0);
        for (pool, (amounts, rows)) in self.twos.iter().zip(twos) {
            let [a, b] = changes(&amounts[0], &rows[0], extents);
            let [c, d] = changes(&amounts[1], &rows[1], extents);
            let pool = usize::from(*pool);
            to.0[pool] = from.0[pool] + ((a + c) + (b + d)) * length;
        }
        for (pool, count) in &self.more {
            let (own, others) = amounts.split_at(usize::from(*count));
            let (own_rows, other_rows) = rows.split_at(usize::from(*count));
            (amounts, rows) = (others, other_rows);
            // two sums side by side: the processor adds to one while the other is under way
            let (mut even, mut odd) = (R::zero(), R::zero());
            for (amounts, rows) in own.iter().zip(own_rows) {
                let [a, b] = changes(amounts, rows, extents);
                even += a;
                odd += b;
            }
            let pool = usize::from(*pool);
            to.0[pool] = from.0[pool] + (even + odd) * length;
        }
    }
}

fn pair<R: Real>(two: &[(u8, R)]) -> ([R; 2], [u8; 2]) {
    let (row, amount) = two[0];
    let (other_row, other) = two.get(1).copied().unwrap_or((row, R::zero()));
    ([amount, other], [row, other_row])
}

#[inline(always)]
fn changes<R: Real>(amounts: &[R; 2], rows: &[u8; 2], extents: &PerRow<R>) -> [R; 2] {
    [0, 1].map(|place| amounts[place] * extents[usize::from(rows[place])])
}
