//! One part of a step by the classical Runge–Kutta scheme of fourth order: four looks at the tank, at the start,
//! twice in the middle and at the end, weighted 1 : 2 : 2 : 1 (see [`step`](super::step)); where a pool is emptied
//! within the part, what is taken from it is fitted (see [`emptying`](super::emptying)).

use crate::base::real::Real;
use crate::model::matrix::{MAY_BE_EMPTIED, PerRow};
use crate::model::pool::Pool;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::emptying::Emptying;
use super::guard::mend;
use super::step::{Stepper, Turn};

/// How far ahead of the start of a part the second, third and fourth look is, as a share of it.
const AHEAD: [f64; 3] = [0.5, 0.5, 1.0];
/// Where the rates of each look are kept: at the start, in the middle (the second in the middle stands
/// with the last until it is added to the first), at the end.
const KEPT: [usize; 4] = [0, 1, 2, 2];
/// The last of the looks that are in the middle, counted from 0.
const LAST_IN_THE_MIDDLE: usize = 2;

impl<R: Real> Stepper<R> {
    /// The extents of one part, in `self.extents`; says in which lanes a look ran short.
    #[inline(always)]
    pub(super) fn part(
        &mut self,
        model: &TankModel<R>,
        before: &State<R>,
        (from_days, days): (R, R),
        turn: Turn<R>,
    ) -> R::Mask {
        let rows = self.rows;
        let start = self.water.inverse_hydrogen;
        let warming = model.warming(&self.water, days);
        let mut short = R::zero().below(R::zero());
        self.drift = self.memory.drift;
        for (look, kept) in KEPT.iter().enumerate() {
            let rates = &mut self.rates[*kept];
            model.rates(&self.water, &mut rates[..rows]);
            let Some(share) = AHEAD.get(look) else {
                break;
            };
            if look == 0 {
                let of = |pool| Emptying::of(model, pool, before, rates, days);
                self.emptied = MAY_BE_EMPTIED.map(of);
            }
            let ahead = R::of(*share) * days;
            let ran_short = self.lead(model, before, (look, *kept, ahead), turn);
            short = R::either(short, ran_short);
            if turn.is_in_vain(short) {
                return short;
            }
            if let Some((_, course)) = &warming {
                self.water.state[Pool::Temperature] = match look {
                    LAST_IN_THE_MIDDLE => course.end_c,
                    _ => course.middle_c,
                };
            }
            self.guess_hydrogen(look, start);
            if look == LAST_IN_THE_MIDDLE {
                add_second_middle(&mut self.rates, rows);
            }
            self.water.days = from_days + ahead;
            model.see(&mut self.water);
        }
        if let Some((row, course)) = warming {
            self.settle(row, course.k_per_day);
        }
        self.add_up(days);
        for pool in self.emptied.iter().flatten() {
            pool.fit(model, &self.rates, days, &mut self.extents);
        }
        short
    }

    /// Puts the tank where the rates of a look lead; says where a pool runs short.
    #[inline(always)]
    fn lead(
        &mut self,
        model: &TankModel<R>,
        before: &State<R>,
        (look, kept, ahead): (usize, usize, R),
        turn: Turn<R>,
    ) -> R::Mask {
        let (rates, water) = (&mut self.rates[kept], &mut self.water);
        let (lit, state) = (water.held.lit, &mut water.state);
        model.matrix().lead(before, rates, (ahead, lit), state);
        let emptied = self.emptied.iter_mut().flatten();
        emptied.for_each(|pool| pool.lead(look, ahead, state));
        let short = mend(model, before, rates, ahead, turn.may_halve, state);
        let emptied = self.emptied.iter_mut().flatten();
        emptied.for_each(|pool| pool.give_up(short));
        short
    }

    /// Guesses H+ at the next look: what it did in the first half it will do in the second, nearly. `start` is one over
    /// that at the start of the part.
    #[inline(always)]
    fn guess_hydrogen(&mut self, look: usize, start: R) {
        if look == LAST_IN_THE_MIDDLE {
            self.drift = self.water.hydrogen * start;
        }
        if look != LAST_IN_THE_MIDDLE - 1 {
            self.water.hydrogen *= self.drift;
        }
    }

    /// Lets the looks of a row, weighted, come to what is known of it: they differ in the middle only.
    #[inline(always)]
    fn settle(&mut self, row: usize, per_day: R) {
        let [first, middle, last] = &mut self.rates;
        middle[row] = R::of(3.0) * per_day - R::of(0.5) * (first[row] + last[row]);
    }

    /// The extents of a part: the looks, weighted.
    #[inline(always)]
    fn add_up(&mut self, days: R) {
        let sixth = R::of(1.0 / 6.0) * days;
        let [first, middle, last] = &self.rates;
        for (row, extent) in self.extents[..self.rows].iter_mut().enumerate() {
            *extent = (first[row] + (middle[row] + middle[row]) + last[row]) * sixth;
        }
    }
}

/// Adds the rates of the second look in the middle to those of the first.
#[inline(always)]
fn add_second_middle<R: Real>(rates: &mut [PerRow<R>; 3], rows: usize) {
    let [_, middle, last] = rates;
    for (both, second) in middle.iter_mut().zip(last).take(rows) {
        *both += *second;
    }
}
