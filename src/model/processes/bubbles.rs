//! Bubbles (pearling): oxygen far above saturation leaves as bubbles from the plants.
//!
//! ```text
//! r = 24·k_eb·(O2 − sigma_eb·O2_sat)·V where O2 is above sigma_eb·O2_sat        mg O2/day
//! ```

use crate::base::real::Real;
use crate::base::sources::practice;
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Bubbles<R> {
    per_day: R,
    threshold: R,
    saturation: Factor,
}

impl<R: Real> Bubbles<R> {
    /// Speed at which oxygen above the threshold leaves, /day.
    pub fn per_day(&self) -> R {
        self.per_day
    }
}

impl<R: Real> Process<R> for Bubbles<R> {
    const ID: &'static str = "bubbles";
    const WHAT: &'static str = "oxygen far above saturation leaves as bubbles";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "sigma_eb",
            "oxygen, relative to saturation, above which bubbles form",
            "1",
            1.35,
            (1.2, 1.8),
            practice("open weedy waters reach 1.7 to 1.8"),
        ),
        parameter(
            "k_eb",
            "speed at which bubbles carry off oxygen that is too much",
            "/h",
            1.0,
            (0.3, 3.0),
            practice(""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let tank = *builder.setup.tank;
        let row = Row::new("").put(Pool::Oxygen, -R::one()).close(
            builder.contents,
            Quantity::OxygenDemand,
            Component::Outside(Flux::Bubbles, Quantity::OxygenDemand),
        );
        let process = Bubbles {
            per_day: R::of(24.0) * builder.get("k_eb"),
            threshold: builder.get("sigma_eb"),
            saturation: (builder.factors)
                .free("O2 saturation", move |t| tank.oxygen_saturation_mg_per_l(t)),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let above = water.oxygen - self.threshold * water.factor(self.saturation);
        rates[0] = self.per_day * above.floor_zero() * water.volume();
    }
}
