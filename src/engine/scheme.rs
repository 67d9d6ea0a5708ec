//! One part of a step by the classical Runge–Kutta scheme of fourth order: four looks at the tank, at the start,
//! twice in the middle and at the end, weighted 1 : 2 : 2 : 1 (see [`step`](super::step)).

use crate::base::real::Real;
use crate::model::matrix::PerRow;
use crate::model::pool::Pool;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::guard::mend;
use super::step::Stepper;

/// How far ahead of the start of a part the second, third and fourth look is, as a share of it.
const AHEAD: [f64; 3] = [0.5, 0.5, 1.0];
/// Where the rates of each look are kept: at the start, in the middle (the second in the middle stands
/// with the last until it is added to the first), at the end.
const KEPT: [usize; 4] = [0, 1, 2, 2];
/// The last of the looks that are in the middle, counted from 0.
const LAST_IN_THE_MIDDLE: usize = 2;

impl<R: Real> Stepper<R> {
    /// The extents of one part, in `self.extents`; says in which lanes a look was held back.
    #[inline(always)]
    pub(super) fn part(
        &mut self,
        model: &TankModel<R>,
        before: &State<R>,
        (from_days, days): (R, R),
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
            let ahead = R::of(*share) * days;
            let water = &mut self.water;
            let lit = water.held.lit;
            let least = (model.matrix()).lead(before, rates, (ahead, lit), &mut water.state);
            let mended = mend(model, before, rates, ahead, least, &mut water.state);
            short = R::either(short, mended);
            if let Some((_, course)) = &warming {
                water.state[Pool::Temperature] = match look {
                    LAST_IN_THE_MIDDLE => course.end_c,
                    _ => course.middle_c,
                };
            }
            // what H+ did in the first half it will do in the second, nearly
            if look == LAST_IN_THE_MIDDLE {
                self.drift = water.hydrogen * start;
                add_second_middle(&mut self.rates, rows);
            }
            if look != LAST_IN_THE_MIDDLE - 1 {
                water.hydrogen *= self.drift;
            }
            water.days = from_days + ahead;
            model.see(water);
        }
        if let Some((row, course)) = warming {
            self.settle(row, course.k_per_day);
        }
        self.add_up(days);
        short
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
