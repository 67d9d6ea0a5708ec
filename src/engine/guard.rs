//! The guard: where a step would take more from a pool than it holds, processes are held back.

use crate::base::real::Real;
use crate::model::matrix::PerRow;
use crate::model::scarcity::least;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

/// Says in which lanes a pool has fallen below zero. Where the part may not be done again in halves (`may_halve`),
/// holds the rows back and runs them again; their rates are left as slow as that.
#[inline(always)]
pub(super) fn mend<R: Real>(
    model: &TankModel<R>,
    from: &State<R>,
    rates: &mut PerRow<R>,
    length: R,
    may_halve: R::Mask,
    to: &mut State<R>,
) -> R::Mask {
    let short = least(to).below(R::zero());
    let stuck = R::both(short, R::not(may_halve));
    if R::any(stuck) {
        hold_back(model, from, rates, length, stuck, to);
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
