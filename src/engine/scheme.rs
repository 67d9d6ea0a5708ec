//! One part of a step by Kutta's scheme of third order: three looks at the tank, at the start, in the middle and at the
//! end, weighted 1 : 4 : 1 (see [`step`](super::step)). Beside the looks stand three things that are quicker than a
//! part: temperature is worked out ahead of them (see [`warming`](crate::model::warming)), a pool that is emptied
//! within the part is fitted (see [`emptying`](super::emptying)), and the indicator follows behind (see
//! [`following`](crate::model::following)).

use crate::base::real::Real;
use crate::model::matrix::MAY_BE_EMPTIED;
use crate::model::pool::Pool;
use crate::model::state::State;
use crate::model::tank_model::TankModel;
use crate::model::warming::Course;

use super::emptying::Emptying;
use super::guard::mend;
use super::step::Stepper;
use super::taking::Turn;

/// Looks at the tank in a part.
pub(super) const LOOKS: usize = 3;
/// How far ahead of the start of a part the second and third look is, as a share of it.
const AHEAD: [f64; LOOKS - 1] = [0.5, 1.0];

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
        let start = self.water.inverse_hydrogen;
        let warming = model.warming(&self.water, days);
        let following = model.following(&self.water);
        let mut co2 = [self.water.co2_mg_per_l(); LOOKS];
        let mut short = R::zero().below(R::zero());
        self.drift = self.memory.drift;
        self.water.warms_by_course = warming.is_some();
        self.rates(model, 0);
        self.find_emptied(model, before, days);
        for (look, share) in AHEAD.into_iter().enumerate() {
            let ahead = R::of(share) * days;
            let ran_short = self.lead(model, before, (look, ahead), turn);
            short = R::either(short, ran_short);
            if turn.is_in_vain(short) {
                return short;
            }
            if let Some((_, course)) = &warming {
                self.water.state[Pool::Temperature] = course.looks_c[look];
            }
            self.guess_hydrogen(look, start);
            self.water.days = from_days + ahead;
            model.see(&mut self.water);
            co2[look + 1] = self.water.co2_mg_per_l();
            self.rates(model, look + 1);
        }
        if let Some((row, course)) = warming {
            self.warm(row, &course);
        }
        if let Some((row, following)) = following {
            self.settle(row, following.on_the_whole(co2, days));
        }
        self.add_up(days);
        for pool in self.emptied.iter().flatten() {
            pool.fit(model, &self.rates, days, &mut self.extents);
        }
        short
    }

    /// The rates at a look.
    #[inline(always)]
    fn rates(&mut self, model: &TankModel<R>, look: usize) {
        model.rates(&self.water, &mut self.rates[look][..self.rows]);
    }

    /// Finds the pools that are emptied within the part.
    #[inline(always)]
    fn find_emptied(&mut self, model: &TankModel<R>, before: &State<R>, days: R) {
        for (emptied, pool) in self.emptied.iter_mut().zip(MAY_BE_EMPTIED) {
            *emptied = Emptying::of(model, pool, before, &self.rates[0], days);
        }
    }

    /// Puts the tank where the rates up to a look lead; says where a pool runs short. To the middle lead the rates at
    /// the start; to the end twice those in the middle less those at the start.
    #[inline(always)]
    fn lead(
        &mut self,
        model: &TankModel<R>,
        before: &State<R>,
        (look, ahead): (usize, R),
        turn: Turn<R>,
    ) -> R::Mask {
        if look > 0 {
            self.bend();
        }
        let (rates, water) = (&mut self.rates[2 * look], &mut self.water);
        let (lit, state) = (water.held.lit, &mut water.state);
        model.matrix().lead(before, rates, (ahead, lit), state);
        let emptied = self.emptied.iter_mut().flatten();
        emptied.for_each(|pool| pool.lead(look, ahead, state));
        let short = mend(model, before, rates, ahead, turn.may_halve, state);
        let emptied = self.emptied.iter_mut().flatten();
        emptied.for_each(|pool| pool.give_up(short));
        short
    }

    /// Puts the rates that lead to the end where those at the end will stand.
    #[inline(always)]
    fn bend(&mut self) {
        let [first, middle, last] = &mut self.rates;
        let both = first.iter().zip(middle).take(self.rows);
        for (bent, (first, middle)) in last.iter_mut().zip(both) {
            *bent = *middle + *middle - *first;
        }
    }

    /// Guesses H+ at the next look: what it did in the first half it will do in the second, nearly. `start` is one over
    /// that at the start of the part.
    #[inline(always)]
    fn guess_hydrogen(&mut self, look: usize, start: R) {
        if look > 0 {
            self.drift = self.water.hydrogen * start;
        }
        self.water.hydrogen *= self.drift;
    }

    /// Lets the looks of the row of heat come to what was worked out ahead.
    #[inline(always)]
    fn warm(&mut self, row: usize, course: &Course<R>) {
        self.rates[0][row] = course.first_k_per_day;
        self.rates[2][row] = course.last_k_per_day;
        self.settle(row, course.k_per_day);
    }

    /// Lets the looks of a row, weighted, come to what is known of it: they differ in the middle only.
    #[inline(always)]
    fn settle(&mut self, row: usize, per_day: R) {
        let [first, middle, last] = &mut self.rates;
        middle[row] = R::of(1.5) * per_day - R::of(0.25) * (first[row] + last[row]);
    }

    /// The extents of a part: the looks, weighted.
    #[inline(always)]
    fn add_up(&mut self, days: R) {
        let sixth = R::of(1.0 / 6.0) * days;
        let four = R::of(4.0);
        let [first, middle, last] = &self.rates;
        for (row, extent) in self.extents[..self.rows].iter_mut().enumerate() {
            *extent = (first[row] + four * middle[row] + last[row]) * sixth;
        }
    }
}
