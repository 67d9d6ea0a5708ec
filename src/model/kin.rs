//! Kin: rows that change several pools in the same proportions.
//!
//! Three stands breathe alike, and whatever rots gives back what tissue is made of: such rows differ
//! only in the stock they draw on, which is the last pool they touch. The matrix adds their rates up
//! before it works out what they share, which saves a third of its work.

use crate::base::real::Real;

use super::matrix::PerRow;
use super::row::Row;

/// A row as pools (by place, in order) and amounts, none of them zero.
pub type PoolRow<R> = Vec<(usize, R)>;

/// Adds kin up.
#[derive(Debug, Clone)]
pub struct KinSums {
    /// Kin of three rows, as the stands of most tanks are: the place of the sum, and the rows.
    threes: Vec<(u8, [u8; 3])>,
    /// Other kin.
    others: Vec<(u8, Vec<u8>)>,
}

impl KinSums {
    /// Sums of families of rows, to stand from a place on.
    pub fn of(families: &[Vec<u8>], first: usize) -> Self {
        let (mut threes, mut others) = (Vec::new(), Vec::new());
        for (place, family) in (first as u8..).zip(families) {
            match <[u8; 3]>::try_from(family.as_slice()) {
                Ok(three) => threes.push((place, three)),
                Err(_) => others.push((place, family.clone())),
            }
        }
        KinSums { threes, others }
    }

    /// Writes the sums behind the rows.
    #[inline(always)]
    pub fn add_up<R: Real>(&self, extents: &mut PerRow<R>) {
        for (place, three) in &self.threes {
            let [a, b, c] = three.map(|row| extents[usize::from(row)]);
            extents[usize::from(*place)] = a + b + c;
        }
        for (place, family) in &self.others {
            let rows = family.iter().map(|row| extents[usize::from(*row)]);
            extents[usize::from(*place)] = rows.fold(R::zero(), |sum, extent| sum + extent);
        }
    }
}

/// The pools of a row.
pub fn in_order_of_pools<R: Real>(row: &Row<R>) -> PoolRow<R> {
    let mut pools: PoolRow<R> = row
        .pools()
        .map(|(pool, amount)| (pool.index(), amount))
        .filter(|(_, amount)| R::any(R::zero().below(amount.abs())))
        .collect();
    pools.sort_by_key(|(pool, _)| *pool);
    pools
}

/// Finds kin: rows that are the same but for their last pool, if adding them up first is less work.
/// Leaves each with its last pool, puts what each family shares behind the rows, and gives the families.
pub fn set_apart<R: Real>(rows: &mut Vec<PoolRow<R>>) -> Vec<Vec<u8>> {
    let mut families: Vec<Vec<u8>> = Vec::new();
    for (at, row) in rows.iter().enumerate() {
        let akin = |family: &&mut Vec<u8>| same(shared(&rows[usize::from(family[0])]), shared(row));
        match families.iter_mut().find(akin) {
            Some(family) => family.push(at as u8),
            None => families.push(vec![at as u8]),
        }
    }
    families.retain(|family| {
        let (count, width) = (family.len(), shared(&rows[usize::from(family[0])]).len());
        count + width < count * width
    });
    for family in &families {
        rows.push(shared(&rows[usize::from(family[0])]).to_vec());
    }
    for row in families.iter().flatten() {
        let row = &mut rows[usize::from(*row)];
        row.drain(..row.len() - 1);
    }
    families
}

/// All but the last pool.
fn shared<R>(row: &PoolRow<R>) -> &[(usize, R)] {
    row.split_last().map_or(&[], |(_, rest)| rest)
}

/// The same pools with the same amounts, in every lane.
fn same<R: Real>(a: &[(usize, R)], b: &[(usize, R)]) -> bool {
    let equal = |(a, b): (&(usize, R), &(usize, R))| {
        a.0 == b.0 && (0..R::LANES).all(|lane| a.1.lane(lane) == b.1.lane(lane))
    };
    a.len() == b.len() && a.iter().zip(b).all(equal)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_that_differ_in_their_last_pool_are_kin() {
        let breath = |stock: usize| vec![(0, -2.0), (1, 1.0), (stock, -1.0)];
        let other = vec![(0, -2.0), (1, 1.5), (9, -1.0)];
        let mut rows = vec![breath(7), other.clone(), breath(8), breath(9)];
        assert_eq!(set_apart(&mut rows), [[0, 2, 3]]);
        let own = |stock: usize| vec![(stock, -1.0)];
        let shared = vec![(0, -2.0), (1, 1.0)];
        assert_eq!(rows, [own(7), other, own(8), own(9), shared]);
    }

    #[test]
    fn a_pair_that_shares_two_pools_is_left_as_it_is() {
        // two additions and two entries are no less than four entries
        let rows = vec![
            vec![(0, 1.0), (1, 2.0), (5, 1.0)],
            vec![(0, 1.0), (1, 2.0), (6, 1.0)],
        ];
        let mut left = rows.clone();
        assert!(set_apart(&mut left).is_empty());
        assert_eq!(left, rows);
    }

    #[test]
    fn sums_stand_behind_the_rows() {
        let mut extents = [0.0; 256];
        extents[..4].copy_from_slice(&[1.0, 2.0, 4.0, 8.0]);
        KinSums::of(&[vec![0, 3], vec![1, 2, 3]], 4).add_up(&mut extents);
        assert_eq!(extents[4..7], [9.0, 14.0, 0.0]);
    }
}
