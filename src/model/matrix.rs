//! All rows together: rates in, changes of pools out. Sparse and in a fixed order in a step; dense,
//! as an `ndarray` table, for tables and tests.

use std::ops::Range;

use ndarray::Array2;

use crate::base::real::Real;

use super::component::Component;
use super::conserved::{FLUXES, QUANTITIES};
use super::kin::{KinSums, PoolRow, in_order_of_pools, set_apart};
use super::pairs::Pairs;
use super::pool::{POOLS, Pool};
use super::row::Row;
use super::state::State;

/// Most rows of a tank; a row number fits a byte, so that looking one up needs no check.
pub const MAX_ROWS: usize = 256;

/// A number per row: a rate, or an extent (rate × time). What stands behind the last row is scratch room.
pub type PerRow<R> = [R; MAX_ROWS];

/// Pools that their eaters may empty within a step (see `engine::emptying`).
pub const MAY_BE_EMPTIED: [Pool; 3] = [Pool::Tan, Pool::Nitrite, Pool::Oxygen];

/// What rows that are held back may take of a pool: all but a hair, so that rounding takes no more than there is.
const NEARLY_ALL: f64 = 1.0 - 64.0 * f64::EPSILON;

/// Places of the pools that must not be negative.
const MUST_NOT_OWE: [Range<usize>; 3] = [0..8, 9..14, 16..POOLS];

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
    /// Fate of each row: rows of one fate are slowed together.
    fates: Vec<usize>,
    fate_count: usize,
    /// Rows that take from the pools that may be emptied, pool by pool.
    takers: [Vec<(u8, R)>; MAY_BE_EMPTIED.len()],
    /// Way across the boundary, quantity, row and amount that leaves per unit of the row.
    outside: Vec<(usize, usize, usize, R)>,
}

/// Every entry of a matrix, pool by pool.
#[derive(Debug, Clone)]
pub struct Entries<R> {
    /// Where the entries of each pool begin, and one past the last.
    starts: [usize; POOLS + 1],
    /// Row and amount.
    entries: Vec<(u8, R)>,
}

impl<R: Real> Entries<R> {
    /// Sums up the rows in order, but for those that come last.
    fn of(rows: &[PoolRow<R>], comes_last: impl Fn(usize) -> bool) -> Self {
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
    pub fn of_pool(&self, pool: usize) -> &[(u8, R)] {
        &self.entries[self.starts[pool]..self.starts[pool + 1]]
    }
}

/// The matrix as a step uses it: kin added up, entries laid out one behind the other.
#[derive(Debug, Clone)]
struct Short<R> {
    kin: KinSums,
    pairs: Pairs<R>,
}

impl<R: Real> Short<R> {
    fn of(mut rows: Vec<PoolRow<R>>, comes_last: impl Fn(usize) -> bool) -> Self {
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
        let (fates, fate_count) = fates(rows);
        let takers = MAY_BE_EMPTIED.map(|pool| takers(full.of_pool(pool.index())));
        Matrix {
            rows: rows.len(),
            lit: Short::of(lit, comes_last),
            dark: Short::of(rows.iter().map(in_the_dark).collect(), comes_last),
            full,
            takers,
            fates,
            fate_count,
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
        short.kin.add_up(extents);
        short.pairs.lead(from, extents, length, to);
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

    /// Slows rows so that no pool gives more than it holds: every row by the scarcest pool that it,
    /// or a row that shares its fate, takes from. Only lanes that are `short` are touched.
    ///
    /// ```text
    /// s_i = min(1, (1 − 64ε)·y_i / Σ taken from i)        row ← row · min over what its fate takes of s_i
    /// ```
    #[cold]
    pub fn hold_back(&self, held: &State<R>, extents: &mut PerRow<R>, short: R::Mask) {
        let mut kept = vec![R::one(); self.fate_count];
        for pool in (0..POOLS).filter(|&pool| !Pool::at(pool).may_be_negative()) {
            let mut taken = R::zero();
            for &(row, amount) in self.full.of_pool(pool) {
                let row = usize::from(row);
                taken += (-amount * extents[row]).floor_zero();
            }
            let share = R::pick(
                R::zero().below(taken),
                (R::of(NEARLY_ALL) * held.0[pool].floor_zero() / taken).least(R::one()),
                R::one(),
            );
            for &(row, amount) in self.full.of_pool(pool) {
                let row = usize::from(row);
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
