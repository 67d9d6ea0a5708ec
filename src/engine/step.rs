//! One step of time.
//!
//! The scheme is Kutta's of third order (Kutta 1901; any text on ordinary differential equations, for example Hairer,
//! Nørsett & Wanner 1993): three looks at the tank, at the start, in the middle and at the end, weighted 1 : 4 : 1.
//!
//! A step is an hour, cut at every switch and event; the end of every hour is the end of a step (see
//! [`simulation`](super::simulation)). Nothing in the model is quick at this length but five things, and each has its
//! own remedy: the gas exchange of strong air and the controller of a valve (1.); a pool that its eaters empty, which
//! is fitted (see `emptying`); the thermostat, whose temperatures are worked out ahead of the other looks (see
//! [`warming`](crate::model::warming)); and the indicator, which follows behind them (see
//! [`following`](crate::model::following)).
//!
//! In this order:
//! 1. Shorten: the step is cut into equal parts so that (gas exchange + air + valve controller) per day
//!    times the part is at most `dt_stiff`, gas exchange more finely not long after something was switched or
//!    happened (see [`shortening`](super::shortening)). What decides is the tank's own state at the start of the
//!    step, what is switched, how long that has been so, and whether it ran short not long ago (3.), nothing else.
//!    To measure the error of a step, every part can be cut further (see
//!    [`finer`](super::shortening::ShorteningRule::finer)).
//! 2. Step processes, not pools: each row gets an extent (rate × time), and pools change by rows ×
//!    extents, so that whatever a row conserves is conserved.
//! 3. If a pool would fall below zero, the part is done again in halves, up to sixteen times as fine as
//!    the rule says; the steps that follow are cut as fine, and by three tenths less after each that does
//!    not run short. At the finest, processes are held back: each by the scarcest pool it takes from. No
//!    pool is ever clipped.
//! 4. Extents are added up; the ledger is made of them.
//!
//! Tanks side by side are cut each by their own rule. A lane that needs fewer parts waits, untouched,
//! for the others, so that it holds the bits it would hold alone; the last lane that is waited for goes on
//! alone (see [`alone`](super::alone)).

use crate::base::real::Real;
use crate::model::held::Held;
use crate::model::matrix::{MAX_ROWS, MAY_BE_EMPTIED, PerRow};
use crate::model::state::State;
use crate::model::tank_model::TankModel;
use crate::model::water::Water;

use super::alone::{Alone, Left, WORTH_PARTS, finish};
use super::emptying::Emptying;
use super::memory::Memory;
use super::scheme::LOOKS;
pub use super::stretch::{Books, Part, Stretch};
use super::taking::Taken;

/// Room for one step; nothing is allocated while stepping.
#[derive(Debug, Clone)]
pub struct Stepper<R: Real> {
    pub(super) rows: usize,
    pub(super) water: Water<R>,
    pub(super) memory: Memory<R>,
    /// The factor of [`Memory::drift`], of the present part.
    pub(super) drift: R,
    /// Rates at the start of a part, in its middle and at its end.
    pub(super) rates: [PerRow<R>; LOOKS],
    /// The pools that are emptied in the part.
    pub(super) emptied: [Option<Emptying<R>>; MAY_BE_EMPTIED.len()],
    pub(super) extents: PerRow<R>,
}

impl<R: Real> Stepper<R> {
    /// Room for the rows of a model.
    pub fn new(model: &TankModel<R>) -> Self {
        let none = [R::zero(); MAX_ROWS];
        Stepper {
            rows: model.matrix().rows(),
            memory: Memory::fresh(),
            water: Water::blank(),
            drift: R::one(),
            rates: [none; LOOKS],
            emptied: [None; MAY_BE_EMPTIED.len()],
            extents: none,
        }
    }

    /// Looks at a state, without stepping.
    #[inline(always)]
    pub fn look(
        &mut self,
        model: &TankModel<R>,
        state: &State<R>,
        held: &Held<R>,
        days: R,
    ) -> &Water<R> {
        self.water.hydrogen = self.memory.hydrogen;
        model.look(state, held, days, &mut self.water);
        &self.water
    }

    /// The water as it was last looked at.
    pub fn water(&self) -> &Water<R> {
        &self.water
    }

    /// Lets a lane begin anew.
    pub fn forget(&mut self, lane: usize) {
        self.memory.set_lane(lane, Memory::fresh());
    }

    /// What the next step must know of the last.
    pub fn memory(&self) -> Memory<R> {
        self.memory
    }

    /// Notes where something has been switched or has happened: where a number is above nothing.
    #[inline(always)]
    pub fn stir(&mut self, stirred: R) {
        self.memory.stir(R::zero().below(stirred));
    }

    /// Goes on from what another stepper knew.
    pub fn recall(&mut self, memory: Memory<R>) {
        self.memory = memory;
    }

    /// What another stepper did in one lane.
    pub(super) fn take_over(&mut self, lane: usize, other: &Stepper<f64>) {
        self.memory.set_lane(lane, other.memory);
        // a run that went wrong is asked which row it was
        if other.impossible_row(0).is_some() {
            for (rates, own) in self.rates.iter_mut().zip(&other.rates) {
                for (rate, own) in rates.iter_mut().zip(own) {
                    rate.set_lane(lane, *own);
                }
            }
        }
    }

    /// Advances a tank over a stretch, in so many equal `parts` (a whole number per lane), or in more where
    /// a pool ran short not long ago. `done` sees every part. The state must have been looked
    /// at (see [`Stepper::look`]) under what the stretch holds. With somebody who knows the tanks alone, a
    /// lane for which the others would wait goes on by itself, and `done` does not see that.
    #[inline(always)]
    pub fn advance(
        &mut self,
        tanks: (&TankModel<R>, Option<&dyn Alone>),
        stretch: &Stretch<'_, R>,
        parts: R,
        mut books: Books<'_, R>,
        done: impl FnMut(&Self, &Part<'_, R>),
    ) {
        let parts = (parts * self.memory.closer).ceil();
        let strained = self.run_parts(tanks, stretch, (R::zero(), parts, true), &mut books, done);
        books.counts.step();
        self.memory.relieve(strained);
    }

    /// Does the parts from one on, of so many; above nothing in lanes in which a pool ran short. `looked` says
    /// whether the state at the start of the first has been looked at.
    #[inline(always)]
    pub(super) fn run_parts(
        &mut self,
        (model, alone): (&TankModel<R>, Option<&dyn Alone>),
        stretch: &Stretch<'_, R>,
        (mut part, mut parts, mut looked): (R, R, bool),
        books: &mut Books<'_, R>,
        mut done: impl FnMut(&Self, &Part<'_, R>),
    ) -> R {
        let mut strained = R::zero();
        let mut waiting = part.below(parts);
        while R::any(waiting) {
            if let (Some(lane), Some(alone)) = (R::lone(waiting), alone) {
                let (from, until) = (part.lane(lane), parts.lane(lane));
                if until - from >= WORTH_PARTS {
                    let left = Left { lane, from, until };
                    if finish(alone, left, stretch, self, books) {
                        strained.set_lane(lane, 1.0);
                    }
                    break;
                }
            }
            let days = R::of(stretch.days) / parts;
            let from_days = R::of(stretch.from_days) + part * days;
            if !looked {
                self.look(model, books.state, stretch.held, from_days);
            }
            looked = false;
            let before = *books.state;
            let Taken { short, again } =
                self.take_part(model, &before, (from_days, days), waiting, books);
            if !R::any(again) {
                done(
                    self,
                    &Part {
                        from_days,
                        days,
                        before: &before,
                        totals: books.totals,
                        held_back: R::any(short),
                    },
                );
            }
            strained = R::pick(short, R::one(), strained);
            part = R::pick(again, part + part, part + R::one());
            parts = R::pick(again, parts + parts, parts);
            waiting = part.below(parts);
        }
        strained
    }

    /// The extents of the last part.
    pub fn extents(&self) -> &PerRow<R> {
        &self.extents
    }

    /// The first row whose rate is not an ordinary number in a lane, in any look of the last part.
    pub fn impossible_row(&self, lane: usize) -> Option<usize> {
        let bad = |rates: &PerRow<R>| {
            rates[..self.rows]
                .iter()
                .position(|rate| !rate.lane(lane).is_finite())
        };
        self.rates.iter().find_map(bad)
    }
}
