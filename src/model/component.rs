//! What a row of the matrix can act on.

use super::conserved::{Flux, Quantity};
use super::pool::Pool;

/// What a row can act on: a pool, or an amount of something conserved from or to the outside.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Component {
    /// A pool of the tank.
    Pool(Pool),
    /// An amount of a conserved quantity that lies outside; +1 in a row means one unit left.
    Outside(Flux, Quantity),
}

impl From<Pool> for Component {
    fn from(pool: Pool) -> Self {
        Component::Pool(pool)
    }
}
