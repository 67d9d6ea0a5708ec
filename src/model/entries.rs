//! The entries of a stoichiometric matrix, laid out for use: pool by pool, and as a step runs through them.

use crate::base::real::Real;

use super::kin::{KinSums, PoolRow, set_apart};
use super::matrix::{MAX_ROWS, PerRow};
use super::pairs::Pairs;
use super::pool::POOLS;
use super::state::State;

/// Every entry of a matrix, pool by pool.
#[derive(Debug, Clone)]
pub(super) struct Entries<R> {
    /// Where the entries of each pool begin, and one past the last.
    starts: [usize; POOLS + 1],
    /// Row and amount.
    entries: Vec<(u8, R)>,
}

impl<R: Real> Entries<R> {
    /// Sums up the rows in order, but for those that come last.
    pub(super) fn of(rows: &[PoolRow<R>], comes_last: impl Fn(usize) -> bool) -> Self {
        let mut columns = vec![Vec::new(); POOLS];
        let mut order: Vec<usize> = (0..rows.len()).collect();
        order.sort_by_key(|&at| comes_last(at));
        for at in order {
            for &(pool, amount) in &rows[at] {
                columns[pool].push((at as u8, amount));
            }
        }
        let mut starts = [0; POOLS + 1];
        for (pool, column) in columns.iter().enumerate() {
            starts[pool + 1] = starts[pool] + column.len();
        }
        let entries = columns.concat();
        Entries { starts, entries }
    }

    /// The entries of one pool: row and amount.
    pub(super) fn of_pool(&self, pool: usize) -> &[(u8, R)] {
        &self.entries[self.starts[pool]..self.starts[pool + 1]]
    }
}

/// The matrix as a step uses it: kin added up, entries laid out one behind the other.
#[derive(Debug, Clone)]
pub(super) struct Short<R> {
    kin: KinSums,
    pairs: Pairs<R>,
}

impl<R: Real> Short<R> {
    pub(super) fn of(mut rows: Vec<PoolRow<R>>, comes_last: impl Fn(usize) -> bool) -> Self {
        let first_sum = rows.len();
        let families = set_apart(&mut rows);
        assert!(
            rows.len() <= MAX_ROWS,
            "a tank has at most {MAX_ROWS} rows and kin"
        );
        Short {
            kin: KinSums::of(&families, first_sum),
            pairs: Pairs::of(&Entries::of(&rows, comes_last)),
        }
    }
    /// Where a state comes to when each row is run by its extent, times a length.
    #[inline(always)]
    pub(super) fn lead(
        &self,
        from: &State<R>,
        extents: &mut PerRow<R>,
        length: R,
        to: &mut State<R>,
    ) {
        self.kin.add_up(extents);
        self.pairs.lead(from, extents, length, to);
    }
}
