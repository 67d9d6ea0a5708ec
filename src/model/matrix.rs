//! All rows together: rates in, changes of pools out. Sparse and in a fixed order in a step; dense,
//! as an `ndarray` table, for tables and tests.

use ndarray::Array2;

use crate::base::real::Real;

use super::component::Component;
use super::conserved::{FLUXES, QUANTITIES};
use super::entries::{Entries, Short};
use super::kin::{PoolRow, in_order_of_pools};
use super::pool::{POOLS, Pool};
use super::row::Row;
use super::scarcity::Fates;
use super::state::State;

/// Most rows of a tank; a row number fits a byte, so that looking one up needs no check.
pub const MAX_ROWS: usize = 256;

/// A number per row: a rate, or an extent (rate × time). What stands behind the last row is scratch room.
pub type PerRow<R> = [R; MAX_ROWS];

/// Pools that their eaters may empty within a step (see `engine::emptying`).
pub const MAY_BE_EMPTIED: [Pool; 3] = [Pool::Tan, Pool::Nitrite, Pool::Oxygen];

/// The stoichiometric matrix of one tank.
///
/// Rows that are kin (see `model::kin`) are added up once per use, and what they change alike is worked out
/// from their sum. The sums stand behind the rows, as if each were one more row.
#[derive(Debug, Clone)]
pub struct Matrix<R> {
    rows: usize,
    /// What a step works with: all rows, and those that work in the dark.
    lit: Short<R>,
    dark: Short<R>,
    /// Every entry of every row.
    full: Entries<R>,
    fates: Fates,
    /// Rows that take from the pools that may be emptied, pool by pool.
    takers: [Vec<(u8, R)>; MAY_BE_EMPTIED.len()],
    /// Way across the boundary, quantity, row and amount that leaves per unit of the row.
    outside: Vec<(usize, usize, usize, R)>,
}

impl<R: Real> Matrix<R> {
    /// Gathers the rows of all processes; each comes with the place of its process.
    pub fn new(rows: &[(usize, Row<R>)]) -> Self {
        let of_pools = |(_, row): &(usize, Row<R>)| in_order_of_pools(row);
        let in_the_dark = |row: &(usize, Row<R>)| match row.1.in_light {
            true => Vec::new(),
            false => of_pools(row),
        };
        let lit: Vec<PoolRow<R>> = rows.iter().map(of_pools).collect();
        let comes_last = |at: usize| rows.get(at).is_some_and(|(_, row)| row.may_be_nothing);
        let full = Entries::of(&lit, comes_last);
        let takers = MAY_BE_EMPTIED.map(|pool| takers(full.of_pool(pool.index())));
        Matrix {
            rows: rows.len(),
            lit: Short::of(lit, comes_last),
            dark: Short::of(rows.iter().map(in_the_dark).collect(), comes_last),
            full,
            takers,
            fates: Fates::of(rows),
            outside: outside(rows),
        }
    }

    /// How many rows there are.
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// Adds to a state what the rows change when each is run by its extent. What stands behind the
    /// extents of the rows is overwritten.
    #[inline(always)]
    pub fn apply(&self, extents: &mut PerRow<R>, state: &mut State<R>) {
        let from = *state;
        self.lead(&from, extents, (R::one(), true), state);
    }

    /// Where a state comes to when each row is run by its extent, times a length. Rows that work only in
    /// the light are left out where there is none (`lit`). What stands behind the extents of the rows is
    /// overwritten, and pools behind the last that a row touches are left in `to` as they are.
    #[inline(always)]
    pub fn lead(
        &self,
        from: &State<R>,
        extents: &mut PerRow<R>,
        (length, lit): (R, bool),
        to: &mut State<R>,
    ) {
        let short = if lit { &self.lit } else { &self.dark };
        short.lead(from, extents, length, to);
    }

    /// The rows that take from a pool of [`MAY_BE_EMPTIED`], and what they take as it stands in the matrix: below
    /// nothing.
    ///
    /// # Panics
    /// For another pool.
    #[inline(always)]
    pub fn takers(&self, pool: Pool) -> &[(u8, R)] {
        let place = MAY_BE_EMPTIED.iter().position(|known| *known == pool);
        &self.takers[place.expect("a pool that may be emptied")]
    }

    /// Slows rows so that no pool gives more than it holds (see [`scarcity`](super::scarcity)). Only lanes that are
    /// `short` are touched.
    #[cold]
    pub fn hold_back(&self, held: &State<R>, extents: &mut PerRow<R>, short: R::Mask) {
        self.fates.hold_back(&self.full, held, extents, short);
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
        for &(row, amount) in self.full.of_pool(pool.index()) {
            column[usize::from(row)] = amount;
        }
        column
    }
}

impl Matrix<f64> {
    /// Rows × pools, dense.
    pub fn table(&self) -> Array2<f64> {
        let mut table = Array2::zeros((self.rows, POOLS));
        for pool in 0..POOLS {
            for &(row, amount) in self.full.of_pool(pool) {
                let row = usize::from(row);
                table[[row, pool]] = amount;
            }
        }
        table
    }
}

/// The entries that take in any lane.
fn takers<R: Real>(entries: &[(u8, R)]) -> Vec<(u8, R)> {
    let takes = |(_, amount): &&(u8, R)| R::any(amount.below(R::zero()));
    entries.iter().filter(takes).copied().collect()
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
