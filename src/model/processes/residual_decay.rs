//! Residual decay: chlorine and monochloramine that came with untreated water fade away.
//!
//! Monochloramine leaves its ammonia behind.
//!
//! ```text
//! r = k_Cl·residual        mg Cl2/day
//! ```

use crate::base::real::Real;
use crate::base::sources::memory;
use crate::base::units::N_PER_CL2;
use crate::model::conserved::Quantity;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct ResidualDecay<R> {
    per_day: R,
}

impl<R: Real> Process<R> for ResidualDecay<R> {
    const ID: &'static str = "residual_decay";
    const WHAT: &'static str = "chlorine and chloramine fade; chloramine leaves ammonia";
    const PARAMETERS: &'static [ParameterSpec] = &[parameter(
        "k_Cl",
        "decay of chlorine and chloramine in the tank",
        "/day",
        10.0,
        (5.0, 20.0),
        memory(&[], ""),
    )];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let freed = R::of(N_PER_CL2);
        let chloramine = Row::new("chloramine")
            .put(Pool::Chloramine, -R::one())
            .put(Pool::Tan, freed)
            .close(builder.contents, Quantity::Charge, Pool::Alkalinity);
        let chlorine = Row::new("chlorine")
            .put(Pool::Chlorine, -R::one())
            .of_stand(1);
        (
            ResidualDecay {
                per_day: builder.get("k_Cl"),
            },
            vec![chloramine, chlorine],
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.per_day * water.amount(Pool::Chloramine);
        rates[1] = self.per_day * water.amount(Pool::Chlorine);
    }
}
