//! Pools that have fallen below zero and must not.

use crate::base::real::Real;
use crate::model::pool::{POOLS, Pool};
use crate::model::state::State;

/// Nothing for pools that must not be negative; more than any debt for those that may.
const ALLOWED_DEBT: [f64; POOLS] = {
    assert!(
        POOLS.is_multiple_of(4),
        "pools are looked through four abreast"
    );
    let mut allowed = [0.0; POOLS];
    allowed[Pool::Alkalinity.index()] = f64::MAX;
    allowed[Pool::Temperature.index()] = f64::MAX;
    allowed[Pool::Indicator.index()] = f64::MAX;
    allowed
};

/// Whether a pool that must not be negative is.
#[inline(always)]
pub(super) fn in_debt<R: Real>(state: &State<R>) -> R::Mask {
    const ABREAST: usize = 4;
    let mut least = [R::zero(); ABREAST];
    for (amounts, allowed) in state
        .0
        .as_chunks::<ABREAST>()
        .0
        .iter()
        .zip(ALLOWED_DEBT.as_chunks::<ABREAST>().0)
    {
        for lane in 0..ABREAST {
            least[lane] = least[lane].least(amounts[lane] + R::of(allowed[lane]));
        }
    }
    least[0]
        .least(least[1])
        .least(least[2].least(least[3]))
        .below(R::zero())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_pools_that_may_be_negative_may_owe() {
        for (index, allowed) in ALLOWED_DEBT.iter().enumerate() {
            assert_eq!(
                *allowed > 0.0,
                Pool::at(index).may_be_negative(),
                "{:?}",
                Pool::at(index)
            );
        }
    }
}
