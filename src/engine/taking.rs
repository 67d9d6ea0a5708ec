//! One part of a step, taken: done, looked after by the guard, and booked.

use crate::base::real::Real;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::guard::mend;
use super::step::{Books, Stepper};

impl<R: Real> Stepper<R> {
    /// Does one part in the lanes that wait for it; where it ran short it is to be done again in halves, or, where
    /// it is as fine as parts may get, processes are held back.
    #[inline(always)]
    pub(super) fn take_part(
        &mut self,
        model: &TankModel<R>,
        before: &State<R>,
        when: (R, R),
        waiting: R::Mask,
        books: &mut Books<'_, R>,
    ) -> Taken<R> {
        let turn = Turn {
            waiting,
            may_halve: self.memory.may_look_closer(),
        };
        let mut short = self.part(model, before, when, turn);
        if !turn.is_in_vain(short) {
            let how_long = (R::one(), self.water.held.lit);
            let (extents, state) = (&mut self.extents, &mut *books.state);
            model.matrix().lead(before, extents, how_long, state);
            let mended = mend(model, before, extents, R::one(), turn.may_halve, state);
            short = R::either(short, mended);
            let done = R::both(waiting, R::not(turn.again(short)));
            self.book(before, books.state, done, books.totals);
            books.counts.part(done, R::both(done, short));
        }
        let again = turn.again(short);
        self.memory.look_closer(again);
        Taken {
            short: R::both(waiting, short),
            again,
        }
    }

    /// Takes over what a part did, in the lanes that were waiting for it.
    #[inline(always)]
    fn book(
        &mut self,
        before: &State<R>,
        state: &mut State<R>,
        waiting: R::Mask,
        totals: &mut [R],
    ) {
        let (hydrogen, drift) = (self.water.hydrogen, self.drift);
        if R::all(waiting) {
            for (total, extent) in totals.iter_mut().zip(&self.extents) {
                *total += *extent;
            }
            self.memory.hydrogen = hydrogen;
            self.memory.drift = drift;
            return;
        }
        for (total, extent) in totals.iter_mut().zip(&self.extents) {
            *total = R::pick(waiting, *total + *extent, *total);
        }
        for (now, then) in state.0.iter_mut().zip(&before.0) {
            *now = R::pick(waiting, *now, *then);
        }
        self.memory.hydrogen = R::pick(waiting, hydrogen, self.memory.hydrogen);
        self.memory.drift = R::pick(waiting, drift, self.memory.drift);
    }
}

/// Whose turn a part is.
#[derive(Clone, Copy)]
pub(super) struct Turn<R: Real> {
    /// The lanes that wait for it.
    pub(super) waiting: R::Mask,
    /// Where it may be done again in halves; elsewhere parts are as fine as they get.
    pub(super) may_halve: R::Mask,
}

impl<R: Real> Turn<R> {
    /// Where it is to be done again, given where it ran short.
    #[inline(always)]
    fn again(&self, short: R::Mask) -> R::Mask {
        R::both(self.waiting, R::both(short, self.may_halve))
    }

    /// Whether it is to be done again wherever it is waited for.
    #[inline(always)]
    pub(super) fn is_in_vain(&self, short: R::Mask) -> bool {
        R::any(short) && !R::any(R::both(self.waiting, R::not(self.again(short))))
    }
}

/// How a part went, by lane.
pub(super) struct Taken<R: Real> {
    /// Where a pool would have fallen below zero.
    pub(super) short: R::Mask,
    /// Where the part was not taken, and is to be done again in halves.
    pub(super) again: R::Mask,
}
