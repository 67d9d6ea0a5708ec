//! All rows together: rates in, changes of pools out. Sparse and in a fixed order in a step; dense,
//! as an `ndarray` table, for tables and tests.

use ndarray::Array2;

use crate::base::real::Real;

use super::component::Component;
use super::conserved::{FLUXES, QUANTITIES};
use super::pool::{POOLS, Pool};
use super::row::Row;
use super::state::State;

/// Most rows of a tank; a row number fits a byte, so that looking one up needs no check.
pub const MAX_ROWS: usize = 256;

/// A number per row: a rate, or an extent (rate × time).
pub type PerRow<R> = [R; MAX_ROWS];

/// Pools that may be negative.
const MAY_OWE: [bool; POOLS] = {
    let mut may = [false; POOLS];
    may[Pool::Alkalinity.index()] = true;
    may[Pool::Temperature.index()] = true;
    may[Pool::Indicator.index()] = true;
    may
};

/// The stoichiometric matrix of one tank.
#[derive(Debug, Clone)]
pub struct Matrix<R> {
    rows: usize,
    /// One past the last pool that any row touches.
    pools: usize,
    /// Where the entries of each pool begin, and one past the last.
    starts: [usize; POOLS + 1],
    /// Row of each entry, pool by pool.
    entry_rows: Vec<u8>,
    /// Its coefficient.
    amounts: Vec<R>,
    /// Fate of each row: rows of one fate are slowed together.
    fates: Vec<usize>,
    fate_count: usize,
    /// Way across the boundary, quantity, row and amount that leaves per unit of the row.
    outside: Vec<(usize, usize, usize, R)>,
}

impl<R: Real> Matrix<R> {
    /// Gathers the rows of all processes; each comes with the place of its process.
    pub fn new(rows: &[(usize, Row<R>)]) -> Self {
        assert!(rows.len() <= MAX_ROWS, "a tank has at most {MAX_ROWS} rows");
        let mut starts = [0; POOLS + 1];
        let (mut entry_rows, mut amounts) = (Vec::new(), Vec::new());
        for pool in 0..POOLS {
            for (at, (_, row)) in rows.iter().enumerate() {
                let amount = row.amount(Pool::at(pool));
                if R::any(R::zero().below(amount.abs())) {
                    entry_rows.push(at as u8);
                    amounts.push(amount);
                }
            }
            starts[pool + 1] = amounts.len();
        }
        let (fates, fate_count) = fates(rows);
        let pools = starts
            .iter()
            .position(|&end| end == amounts.len())
            .unwrap_or(POOLS);
        Matrix {
            rows: rows.len(),
            pools,
            starts,
            entry_rows,
            amounts,
            fates,
            fate_count,
            outside: outside(rows),
        }
    }

    /// How many rows there are.
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// Adds to a state what the rows change when each is run by its extent, times a length.
    #[inline(always)]
    pub fn apply(&self, extents: &PerRow<R>, length: R, state: &mut State<R>) {
        for (pool, ends) in self.starts[..=self.pools].windows(2).enumerate() {
            state.0[pool] += self.change(ends, extents) * length;
        }
    }

    /// Where a state comes to when each row is run by its extent, times a length; gives the least of
    /// the pools that must not be negative and that any row touches.
    #[inline(always)]
    pub fn lead(&self, from: &State<R>, extents: &PerRow<R>, length: R, to: &mut State<R>) -> R {
        let mut least = R::zero();
        for (pool, ends) in self.starts[..=self.pools].windows(2).enumerate() {
            let amount = from.0[pool] + self.change(ends, extents) * length;
            to.0[pool] = amount;
            if !MAY_OWE[pool] {
                least = least.least(amount);
            }
        }
        to.0[self.pools..].copy_from_slice(&from.0[self.pools..]);
        least
    }

    /// What the entries of one pool change together.
    #[inline(always)]
    fn change(&self, ends: &[usize], extents: &PerRow<R>) -> R {
        let (amounts, rows) = (
            &self.amounts[ends[0]..ends[1]],
            &self.entry_rows[ends[0]..ends[1]],
        );
        let (fours, last) = amounts.as_chunks::<4>();
        let (row_fours, last_rows) = rows.as_chunks::<4>();
        // four sums side by side: the processor adds to one while the others are under way
        let mut sums = [R::zero(); 4];
        for (amounts, rows) in fours.iter().zip(row_fours) {
            for place in 0..4 {
                sums[place] += amounts[place] * extents[usize::from(rows[place])];
            }
        }
        for (place, (amount, row)) in last.iter().zip(last_rows).enumerate() {
            sums[place % 4] += *amount * extents[usize::from(*row)];
        }
        (sums[0] + sums[1]) + (sums[2] + sums[3])
    }

    /// The entries of one pool: row and amount.
    fn entries(&self, pool: usize) -> impl Iterator<Item = (usize, R)> + '_ {
        let range = self.starts[pool]..self.starts[pool + 1];
        let rows = self.entry_rows[range.clone()].iter();
        rows.map(|row| usize::from(*row))
            .zip(self.amounts[range].iter().copied())
    }

    /// Slows rows so that no pool gives more than it holds: every row by the scarcest pool that it,
    /// or a row that shares its fate, takes from. Only lanes that are `short` are touched.
    ///
    /// ```text
    /// s_i = min(1, y_i / Σ taken from i)        row ← row · min over what its fate takes of s_i
    /// ```
    #[cold]
    pub fn hold_back(&self, held: &State<R>, extents: &mut PerRow<R>, short: R::Mask) {
        let mut kept = vec![R::one(); self.fate_count];
        for pool in (0..POOLS).filter(|&pool| !Pool::at(pool).may_be_negative()) {
            let mut taken = R::zero();
            for (row, amount) in self.entries(pool) {
                taken += (-amount * extents[row]).floor_zero();
            }
            let share = R::pick(
                R::zero().below(taken),
                (held.0[pool].floor_zero() / taken).least(R::one()),
                R::one(),
            );
            for (row, amount) in self.entries(pool) {
                let takes = R::zero().below(-amount * extents[row]);
                let fate = &mut kept[self.fates[row]];
                *fate = R::pick(takes, fate.least(share), *fate);
            }
        }
        for (extent, &fate) in extents.iter_mut().zip(&self.fates) {
            *extent = R::pick(short, *extent * kept[fate], *extent);
        }
    }

    /// What the rows have carried into the tank, per way and conserved quantity, by their extents.
    pub fn crossed(&self, extents: &[R]) -> [[R; QUANTITIES.len()]; FLUXES.len()] {
        let mut crossed = [[R::zero(); QUANTITIES.len()]; FLUXES.len()];
        for &(flux, quantity, row, leaves) in &self.outside {
            crossed[flux][quantity] -= leaves * extents[row];
        }
        crossed
    }

    /// The change of one pool by each row, in the order of the rows.
    pub fn column(&self, pool: Pool) -> Vec<R> {
        let mut column = vec![R::zero(); self.rows];
        for (row, amount) in self.entries(pool.index()) {
            column[row] = amount;
        }
        column
    }
}

impl Matrix<f64> {
    /// Rows × pools, dense.
    pub fn table(&self) -> Array2<f64> {
        let mut table = Array2::zeros((self.rows, POOLS));
        for pool in 0..POOLS {
            for (row, amount) in self.entries(pool) {
                table[[row, pool]] = amount;
            }
        }
        table
    }
}

/// Numbers the pairs of process and group.
fn fates<R: Real>(rows: &[(usize, Row<R>)]) -> (Vec<usize>, usize) {
    let mut known: Vec<(usize, usize)> = Vec::new();
    let fates = rows
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
    (fates, known.len())
}

fn outside<R: Real>(rows: &[(usize, Row<R>)]) -> Vec<(usize, usize, usize, R)> {
    let mut outside = Vec::new();
    for (at, (_, row)) in rows.iter().enumerate() {
        for (component, leaves) in &row.entries {
            if let Component::Outside(flux, quantity) = component {
                let place = QUANTITIES
                    .iter()
                    .position(|q| q == quantity)
                    .expect("every quantity is listed");
                outside.push((flux.index(), place, at, *leaves));
            }
        }
    }
    outside
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_pools_that_may_be_negative_may_owe() {
        for (index, may) in MAY_OWE.iter().enumerate() {
            assert_eq!(
                *may,
                Pool::at(index).may_be_negative(),
                "{:?}",
                Pool::at(index)
            );
        }
    }
}
