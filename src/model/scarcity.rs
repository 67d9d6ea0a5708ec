//! What happens where a pool would give more than it holds: who finds it out, and which rows are slowed.

use std::ops::Range;

use crate::base::real::Real;

use super::entries::Entries;
use super::matrix::PerRow;
use super::pool::{POOLS, Pool};
use super::row::Row;
use super::state::State;

/// Places of the pools that must not be negative.
const MUST_NOT_OWE: [Range<usize>; 3] = [0..8, 9..14, 16..POOLS];

/// What rows that are held back may take of a pool: all but a hair, so that rounding takes no more than there is.
const NEARLY_ALL: f64 = 1.0 - 64.0 * f64::EPSILON;

/// The least of the pools that must not be negative, and of nothing.
#[inline(always)]
pub fn least<R: Real>(state: &State<R>) -> R {
    // eight at a time: the processor compares some while others are under way
    let mut least = [R::zero(); 8];
    for pools in MUST_NOT_OWE {
        for eight in state.0[pools].chunks(8) {
            for (least, amount) in least.iter_mut().zip(eight) {
                *least = least.least(*amount);
            }
        }
    }
    let [a, b, c, d, e, f, g, h] = least;
    let (low, high) = (a.least(b).least(c.least(d)), e.least(f).least(g.least(h)));
    low.least(high)
}

/// Which rows are slowed together: those of one process and group share a fate.
#[derive(Debug, Clone)]
pub(super) struct Fates {
    /// Number of the fate of each row.
    of_rows: Vec<usize>,
    count: usize,
}

impl Fates {
    /// Numbers the pairs of process and group.
    pub(super) fn of<R: Real>(rows: &[(usize, Row<R>)]) -> Self {
        let mut known: Vec<(usize, usize)> = Vec::new();
        let of_rows = rows
            .iter()
            .map(|(process, row)| {
                let pair = (*process, row.group);
                known
                    .iter()
                    .position(|&other| other == pair)
                    .unwrap_or_else(|| {
                        known.push(pair);
                        known.len() - 1
                    })
            })
            .collect();
        let count = known.len();
        Fates { of_rows, count }
    }

    /// Slows rows so that no pool gives more than it holds: every row by the scarcest pool that it,
    /// or a row that shares its fate, takes from. Only lanes that are `short` are touched.
    ///
    /// ```text
    /// s_i = min(1, (1 − 64ε)·y_i / Σ taken from i)        row ← row · min over what its fate takes of s_i
    /// ```
    pub(super) fn hold_back<R: Real>(
        &self,
        full: &Entries<R>,
        held: &State<R>,
        extents: &mut PerRow<R>,
        short: R::Mask,
    ) {
        let mut kept = vec![R::one(); self.count];
        for pool in (0..POOLS).filter(|&pool| !Pool::at(pool).may_be_negative()) {
            let mut taken = R::zero();
            for &(row, amount) in full.of_pool(pool) {
                let row = usize::from(row);
                taken += (-amount * extents[row]).floor_zero();
            }
            let share = R::pick(
                R::zero().below(taken),
                (R::of(NEARLY_ALL) * held.0[pool].floor_zero() / taken).least(R::one()),
                R::one(),
            );
            for &(row, amount) in full.of_pool(pool) {
                let row = usize::from(row);
                let takes = R::zero().below(-amount * extents[row]);
                let fate = &mut kept[self.of_rows[row]];
                *fate = R::pick(takes, fate.least(share), *fate);
            }
        }
        for (extent, &fate) in extents.iter_mut().zip(&self.of_rows) {
            *extent = R::pick(short, *extent * kept[fate], *extent);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_pools_that_may_be_negative_may_owe() {
        let must_not = |place: usize| MUST_NOT_OWE.iter().any(|pools| pools.contains(&place));
        for place in 0..POOLS {
            let pool = Pool::at(place);
            assert_eq!(must_not(place), !pool.may_be_negative(), "{pool:?}");
        }
    }
}
