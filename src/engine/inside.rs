//! Readings between the ends of a step, for those who want to look closely.

use std::ops::Range;

use crate::base::clock::{DAY, days};
use crate::base::real::Real;
use crate::model::held::Held;

use super::plan::Plan;
use super::result::Side;
use super::step::{Part, Stepper};
use super::watcher::Watcher;

/// Looks into the parts of one step.
pub struct Inside<'a, R: Real, W> {
    plan: &'a Plan<R>,
    held: &'a Held<R>,
    minutes: Range<u32>,
    every: Option<u32>,
    watcher: &'a mut W,
}

impl<'a, R: Real, W: Watcher<R>> Inside<'a, R, W> {
    /// For a step over some minutes.
    #[inline(always)]
    pub fn new(
        plan: &'a Plan<R>,
        held: &'a Held<R>,
        minutes: Range<u32>,
        watcher: &'a mut W,
    ) -> Self {
        let every = watcher.close_up(minutes.start);
        Inside {
            plan,
            held,
            minutes,
            every,
            watcher,
        }
    }

    /// Looks into a part that has just been done, if the watcher asked for it.
    #[inline(always)]
    pub fn look(&mut self, stepper: &Stepper<R>, part: &Part<'_, R>) {
        if let Some(every) = self.every {
            self.read(stepper, part, every);
        }
    }

    #[cold]
    fn read(&mut self, stepper: &Stepper<R>, part: &Part<'_, R>, every: u32) {
        assert_eq!(R::LANES, 1, "one tank is looked at closely, not several");
        let plan = self.plan;
        let from = part.from_days.lane(0) * f64::from(DAY);
        let length = part.days.lane(0) * f64::from(DAY);
        let first = (self.minutes.start / every + 1) * every;
        for minute in (first..self.minutes.end).step_by(every as usize) {
            let share = (f64::from(minute) - from) / length;
            if share <= 0.0 || share > 1.0 {
                continue; // in another part
            }
            let (state, extents) = stepper.inside(&plan.model, part, R::of(share));
            let mut water = *stepper.water();
            let days = R::of(days(minute));
            plan.model.look(&state, self.held, days, &mut water);
            let mut reading = (plan.gauge).read(&plan.model, &water, minute, Side::Plain);
            let used = |extents: &[R]| plan.gauge.gas_used_g(extents);
            reading.gas_used_g = used(part.totals) - used(stepper.extents()) + used(&extents);
            self.watcher.see_inside(&reading);
        }
    }
}
