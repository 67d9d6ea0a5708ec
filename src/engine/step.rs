//! One step of time.
//!
//! The scheme is the classical Runge–Kutta scheme of fourth order (Kutta 1901; any text on ordinary
//! differential equations, for example Hairer, Nørsett & Wanner 1993): four looks at the tank, at
//! the start, twice in the middle and at the end, weighted 1 : 2 : 2 : 1.
//!
//! Lengths, which the clock gives (see [`simulation`](super::simulation)): half an hour while the light
//! is on, since oxygen, carbon dioxide and pH then move with all that grows; an hour in the dark, when
//! only slow things are left; but half an hour at most from anything that is switched or happens to the
//! next half hour of the clock, since whatever that sets off fades within hours. The end of every hour
//! is the end of a step. Nothing in the model is stiff at these lengths but the gas exchange of strong
//! air, the controller of a valve, a pool that its eaters empty, and the thermostat, whose temperatures
//! are worked out ahead of the other looks (see [`warming`](crate::model::warming)).
//!
//! In this order:
//! 1. Shorten: the step is cut into equal parts so that (gas exchange + air + valve controller) per day
//!    times the part is at most `dt_stiff` (see [`shortening`](super::shortening)). What decides is the tank's own state at the start of the step, what is switched and whether it was held back (3.), nothing
//!    else. To measure the error of a step, every part can be cut further (see
//!    [`finer`](super::shortening::ShorteningRule::finer)).
//! 2. Step processes, not pools: each row gets an extent (rate × time), and pools change by rows ×
//!    extents, so that whatever a row conserves is conserved.
//! 3. If a pool would fall below zero, the part is done again with processes held back: each by
//!    the scarcest pool it takes from. No pool is ever clipped. The steps that follow are cut finer, since
//!    a pool that is emptied within a step turns over faster than the step can tell: twice as fine after
//!    each such step, up to sixteen times, and a tenth less after each without.
//! 4. Extents are added up; the ledger is made of them.
//!
//! Tanks side by side are cut each by their own rule. A lane that needs fewer parts waits, untouched,
//! for the others, so that it holds the bits it would hold alone; the last lane that is waited for goes on
//! alone (see [`alone`](super::alone)).

use crate::base::real::Real;
use crate::model::held::Held;
use crate::model::matrix::{MAX_ROWS, PerRow};
use crate::model::state::State;
use crate::model::tank_model::TankModel;
use crate::model::water::Water;

use super::alone::{Alone, Left, WORTH_PARTS, finish};
use super::guard::mend;
use super::memory::Memory;
pub use super::stretch::{Books, Part, Stretch};

/// Room for one step; nothing is allocated while stepping.
#[derive(Debug, Clone)]
pub struct Stepper<R> {
    pub(super) rows: usize,
    pub(super) water: Water<R>,
    pub(super) memory: Memory<R>,
    /// The factor of [`Memory::drift`], of the present part.
    pub(super) drift: R,
    /// Rates at the start of a part, both in its middle added up, and at its end.
    pub(super) rates: [PerRow<R>; 3],
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
            rates: [none; 3],
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
    /// processes had to be held back not long ago. `done` sees every part. The state must have been looked
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
        let strained = self.run_parts(tanks, stretch, (R::zero(), parts), &mut books, done);
        books.counts.step();
        self.memory.look_closer(strained);
    }

    /// Does the parts from one on, of so many; above nothing in lanes in which processes were held back.
    #[inline(always)]
    pub(super) fn run_parts(
        &mut self,
        (model, alone): (&TankModel<R>, Option<&dyn Alone>),
        stretch: &Stretch<'_, R>,
        (mut part, parts): (R, R),
        books: &mut Books<'_, R>,
        mut done: impl FnMut(&Self, &Part<'_, R>),
    ) -> R {
        let days = R::of(stretch.days) / parts;
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
            let from_days = R::of(stretch.from_days) + part * days;
            if R::any(R::zero().below(part)) {
                self.look(model, books.state, stretch.held, from_days);
            }
            let before = *books.state;
            let short = self.take_part(model, (from_days, days), waiting, books);
            strained = R::pick(short, R::pick(waiting, R::one(), strained), strained);
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
            part += R::one();
            waiting = part.below(parts);
        }
        strained
    }

    /// Does one part in the lanes that wait for it; says in which processes were held back.
    #[inline(always)]
    fn take_part(
        &mut self,
        model: &TankModel<R>,
        when: (R, R),
        waiting: R::Mask,
        books: &mut Books<'_, R>,
    ) -> R::Mask {
        let (before, one) = (*books.state, R::one());
        let short = self.part(model, &before, when);
        let how_long = (one, self.water.held.lit);
        let (extents, state) = (&mut self.extents, &mut *books.state);
        let least = model.matrix().lead(&before, extents, how_long, state);
        let mended = mend(model, &before, extents, one, least, state);
        let short = R::either(short, mended);
        self.book(&before, books.state, waiting, books.totals);
        books.counts.part(waiting, short);
        short
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
