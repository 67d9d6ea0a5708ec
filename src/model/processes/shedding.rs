//! Shedding (melt): tissue grown out of water is dropped some days after planting.
//!
//! ```text
//! r = E/t_melt once the stand is t_lag days old        g/day
//! ```

use crate::base::real::Real;
use crate::base::sources::practice;
use crate::model::conserved::Quantity;
use crate::model::litter::Litter;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Shedding<R> {
    per_day: R,
}

impl<R: Real> Process<R> for Shedding<R> {
    const ID: &'static str = "shedding";
    const WHAT: &'static str = "out-of-water tissue is shed after planting";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "t_lag",
            "days after planting before shedding begins",
            "day",
            2.0,
            (1.0, 4.0),
            practice(""),
        ),
        parameter(
            "t_melt",
            "days in which shedding falls to a third",
            "day",
            10.0,
            (5.0, 21.0),
            practice(""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let litter = Litter::new(builder);
        let rows = builder
            .setup
            .stands
            .iter()
            .enumerate()
            .map(|(stand, plan)| {
                let shed = Pool::Emersed(stand);
                let nitrogen = builder
                    .contents
                    .of(shed.into(), Quantity::Nitrogen)
                    .expect("tissue holds nitrogen");
                let row = Row::new(&plan.name).of_stand(stand).put(shed, -R::one());
                litter.nitrogen(litter.tissue(row, R::one()), nitrogen)
            });
        let rows = rows.collect();
        (
            Shedding {
                per_day: R::one() / builder.get("t_melt"),
            },
            rows,
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        for (stand, rate) in rates.iter_mut().enumerate() {
            let sheds = water.held.shedding[stand];
            *rate = self.per_day * water.amount(Pool::Emersed(stand)) * sheds;
        }
    }
}
