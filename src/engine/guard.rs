//! The guard: where a step would take more from a pool than it holds, processes are held back.

use crate::base::real::Real;
use crate::model::matrix::PerRow;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

/// Where a pool has fallen below zero (`least` is the least of them), holds the rows back and runs
/// them again; says in which lanes that was so. Their rates are left as slow as that.
#[inline(always)]
pub(super) fn mend<R: Real>(
    model: &TankModel<R>,
    from: &State<R>,
    rates: &mut PerRow<R>,
    length: R,
    least: R,
    to: &mut State<R>,
) -> R::Mask {
    let short = least.below(R::zero());
    if R::any(short) {
        hold_back(model, from, rates, length, short, to);
    }
    short
}

#[cold]
fn hold_back<R: Real>(
    model: &TankModel<R>,
    from: &State<R>,
    rates: &mut PerRow<R>,
    length: R,
    short: R::Mask,
    to: &mut State<R>,
) {
    let mut extents = *rates;
    for extent in &mut extents {
        *extent *= length;
    }
    model.matrix().hold_back(from, &mut extents, short);
    let mut slowed = *from;
    model.matrix().apply(&mut extents, &mut slowed);
    for (amount, slow) in to.0.iter_mut().zip(&slowed.0) {
        *amount = R::pick(short, *slow, *amount);
    }
    for (rate, slow) in rates.iter_mut().zip(&extents) {
        *rate = R::pick(short, *slow / length, *rate);
    }
}
