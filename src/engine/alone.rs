//! A lane that is left alone goes on alone.
//!
//! Where the steps of one tank are cut much finer than those of its neighbours, they would look on through
//! all its parts. What is left of the step is then done for that tank by itself, with the bits it would get
//! among the others, and put back into its lane.

use crate::base::abreast::{Work as Wide, wide};
use crate::base::real::Real;
use crate::model::matrix::MAX_ROWS;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::step::{Books, Stepper, Stretch};
use super::work::Counts;

/// Who knows the model of each tank by itself.
pub trait Alone {
    /// The model of the tank of a lane.
    fn model(&self, lane: usize) -> &TankModel<f64>;
}

/// Fewer parts than this are not worth the way out of the lane and back.
pub(super) const WORTH_PARTS: f64 = 3.0;

/// Parts `from` to `until` of a stretch, counted from 0, of the tank of one lane.
#[derive(Debug, Clone, Copy)]
pub(super) struct Left {
    pub(super) lane: usize,
    pub(super) from: f64,
    pub(super) until: f64,
}

/// Does the parts that are left in one lane; says whether a pool ran short in them.
#[inline(never)]
pub(super) fn finish<R: Real>(
    alone: &dyn Alone,
    left: Left,
    stretch: &Stretch<'_, R>,
    stepper: &mut Stepper<R>,
    books: &mut Books<'_, R>,
) -> bool {
    let lane = left.lane;
    let model = alone.model(lane);
    let mut state = State(books.state.0.map(|amount| amount.lane(lane)));
    let mut totals = [0.0; MAX_ROWS];
    let totals = &mut totals[..books.totals.len()];
    for (own, all) in totals.iter_mut().zip(books.totals.iter()) {
        *own = all.lane(lane);
    }
    let mut own = Stepper::new(model);
    own.recall(stepper.memory().lane(lane));
    let mut counts = Counts::default();
    let strained = wide(Rest {
        stepper: &mut own,
        model,
        stretch: Stretch {
            from_days: stretch.from_days,
            days: stretch.days,
            held: &stretch.held.lane(lane),
        },
        left,
        books: Books {
            state: &mut state,
            totals,
            counts: &mut counts,
        },
    });
    for (all, own) in books.state.0.iter_mut().zip(&state.0) {
        all.set_lane(lane, *own);
    }
    for (all, own) in books.totals.iter_mut().zip(totals) {
        all.set_lane(lane, *own);
    }
    books.counts.add(lane, &counts);
    stepper.take_over(lane, &own);
    strained
}

/// The rest of a stretch.
struct Rest<'a> {
    stepper: &'a mut Stepper<f64>,
    model: &'a TankModel<f64>,
    stretch: Stretch<'a, f64>,
    left: Left,
    books: Books<'a, f64>,
}

impl Wide for Rest<'_> {
    type Output = bool;

    #[inline(always)]
    fn go(mut self) -> bool {
        let parts = (self.left.from, self.left.until, false);
        let tank = (self.model, None);
        let strained =
            (self.stepper).run_parts(tank, &self.stretch, parts, &mut self.books, |_, _| {});
        0.0 < strained
    }
}
