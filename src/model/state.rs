//! The state: amounts of all pools of one tank.

use std::ops::{Index, IndexMut};

use crate::base::real::Real;

use super::pool::{POOLS, Pool};

/// Amounts per tank, indexed by pool, in the units of [`Pool`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct State<R>(pub [R; POOLS]);

impl<R: Real> Default for State<R> {
    fn default() -> Self {
        State([R::zero(); POOLS])
    }
}

impl<R> Index<Pool> for State<R> {
    type Output = R;
    #[inline(always)]
    fn index(&self, pool: Pool) -> &R {
        &self.0[pool.index()]
    }
}

impl<R> IndexMut<Pool> for State<R> {
    #[inline(always)]
    fn index_mut(&mut self, pool: Pool) -> &mut R {
        &mut self.0[pool.index()]
    }
}
