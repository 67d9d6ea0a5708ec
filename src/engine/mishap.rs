//! What happens when a number is none: the lane is set aside with its cause, and the others go on.

use crate::base::clock;
use crate::base::real::Real;
use crate::model::pool::{POOLS, Pool};
use crate::model::water::Water;

use super::error::RunError;
use super::simulation::Simulation;

impl<R: Real> Simulation<'_, R> {
    /// # Errors
    /// The first impossible number when no lane is left without one.
    #[inline(always)]
    pub(super) fn check(&mut self) -> Result<(), RunError> {
        let mut sums = [R::zero(); 4];
        for four in self.state.0.as_chunks::<4>().0 {
            for (sum, amount) in sums.iter_mut().zip(four) {
                *sum += *amount;
            }
        }
        let sum = (sums[0] + sums[1]) + (sums[2] + sums[3]);
        if sum.is_finite() {
            return Ok(());
        }
        self.set_aside(sum)
    }

    #[cold]
    fn set_aside(&mut self, sum: R) -> Result<(), RunError> {
        for lane in (0..R::LANES).filter(|&lane| !sum.lane(lane).is_finite()) {
            let error = self.impossible(lane);
            self.failed[lane].get_or_insert(error);
            self.empty(lane);
        }
        if self.failed.iter().any(Option::is_none) {
            return Ok(());
        }
        Err(self.failed[0].clone().expect("every lane has failed"))
    }

    /// Puts a lane back to how it was filled, where it does no harm.
    fn empty(&mut self, lane: usize) {
        for (amount, start) in self.state.0.iter_mut().zip(&self.plan.start.0) {
            amount.set_lane(lane, start.lane(lane));
        }
        for extent in &mut self.extents {
            extent.set_lane(lane, 0.0);
        }
        self.stepper.forget(lane);
    }

    fn impossible(&self, lane: usize) -> RunError {
        let pool = (0..POOLS)
            .find(|&pool| !self.state.0[pool].lane(lane).is_finite())
            .unwrap_or(0);
        let row = self.stepper.impossible_row(lane);
        RunError::Impossible {
            process: row.map_or_else(
                || "the step itself".into(),
                |row| self.plan.model.row_name(row),
            ),
            pool: format!("{:?}", Pool::at(pool)),
            day: clock::days(self.minute),
            inputs: inputs(self.stepper.water(), lane),
        }
    }
}

fn inputs<R: Real>(water: &Water<R>, lane: usize) -> String {
    let of = |number: R| number.lane(lane);
    format!(
        "{:.3} L, {:.2} °C, H+ {:e} mol/L, total ammonia {:.4}, nitrite {:.4}, nitrate {:.4}, oxygen {:.3} mg/L, \
         inorganic carbon {:.4} mmol/L, alkalinity {:.4} meq/L",
        of(water.volume()),
        of(water.temperature()),
        of(water.hydrogen),
        of(water.tan),
        of(water.nitrite),
        of(water.nitrate),
        of(water.oxygen),
        of(water.carbon),
        of(water.alkalinity)
    )
}
