//! Iron loss: chelated iron falls out of its chelate and precipitates.
//!
//! ```text
//! r = k_Fe·Fe        mg/day
//! ```

use crate::base::real::Real;
use crate::base::sources::calibrated;
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct IronLoss<R> {
    per_day: R,
}

impl<R: Real> Process<R> for IronLoss<R> {
    const ID: &'static str = "iron_loss";
    const WHAT: &'static str = "iron falls out of its chelate";
    const PARAMETERS: &'static [ParameterSpec] = &[parameter(
        "k_Fe",
        "loss of chelated iron",
        "/day",
        0.2,
        (0.05, 1.0),
        calibrated(&[], ""),
    )];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let row = Row::new("").put(Pool::Iron, -R::one()).close(
            builder.contents,
            Quantity::Iron,
            Component::Outside(Flux::IronPrecipitation, Quantity::Iron),
        );
        (
            IronLoss {
                per_day: builder.get("k_Fe"),
            },
            vec![row],
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.per_day * water.amount(Pool::Iron);
    }
}
