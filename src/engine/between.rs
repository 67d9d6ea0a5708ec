//! The continuous extension of a step: where the tank was between its ends.

use crate::base::real::Real;
use crate::model::matrix::PerRow;
use crate::model::state::State;
use crate::model::tank_model::TankModel;

use super::step::{Part, Stepper};

impl<R: Real> Stepper<R> {
    /// The pools inside the last part, at a share of its length, and the extents that led there.
    ///
    /// ```text
    /// y(θ) = y + Δt·(b₁·k₁ + b₂·k₂ + b₃·k₃)
    /// b₁ = θ − 3/2·θ² + 2/3·θ³       b₂ = 2·θ² − 4/3·θ³       b₃ = 2/3·θ³ − ½·θ²
    /// ```
    /// The parabola through the rates at the looks, summed up (by hand). Second order. What empties a pool fades as it
    /// was fitted to. Where processes were held back, a straight line, so that nothing falls below zero in between
    /// either.
    pub fn inside(
        &self,
        model: &TankModel<R>,
        part: &Part<'_, R>,
        share: R,
    ) -> (State<R>, PerRow<R>) {
        let mut state = *part.before;
        let mut extents = self.extents_inside(model, part, share);
        model.matrix().apply(&mut extents, &mut state);
        (state, extents)
    }

    fn extents_inside(&self, model: &TankModel<R>, part: &Part<'_, R>, share: R) -> PerRow<R> {
        let mut extents = self.extents;
        if part.held_back {
            extents.iter_mut().for_each(|extent| *extent *= share);
            return extents;
        }
        let square = share * share;
        let cube = square * share;
        let middle = R::of(2.0) * square - R::of(4.0 / 3.0) * cube;
        let last = R::of(2.0 / 3.0) * cube - R::of(0.5) * square;
        let first = share - middle - last;
        for (row, extent) in extents[..self.rows].iter_mut().enumerate() {
            let [k1, k2, k3] = self.rates.each_ref().map(|rates| rates[row]);
            *extent = (k1 * first + k2 * middle + k3 * last) * part.days;
        }
        for pool in self.emptied.iter().flatten() {
            pool.fit_inside(model, &self.rates, (part.days, share), &mut extents);
        }
        extents
    }
}
