//! Phosphorus exchange: phosphate moves between the pore water of the soil and the water above it.
//!
//! ```text
//! P_p = PX/(m·KdP + V_pw)        r = k_ex·th_ex^(T − 25)·1000·A_bed·(P_p − PO4/V)        mg P/day, both ways
//! ```

use crate::base::real::Real;
use crate::base::sources::{calibrated, memory};
use crate::model::conserved::Quantity;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

use super::soil_exchange::exchange_l_per_day;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct PhosphorusExchange<R> {
    litres_per_day: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for PhosphorusExchange<R> {
    const ID: &'static str = "phosphorus_exchange";
    const WHAT: &'static str = "phosphate moves between soil and water";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "P0",
            "exchangeable phosphorus of the soil at filling",
            "mg P/kg",
            20.0,
            (5.0, 60.0),
            calibrated(&[], "pore water 0.1 mg P/L"),
        ),
        parameter(
            "KdP",
            "phosphate held by the soil per pore water",
            "L/kg",
            200.0,
            (50.0, 1000.0),
            memory(&[], ""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let out = Row::new("into the water")
            .put(Pool::SoilPhosphorus, -R::one())
            .put(Pool::Phosphate, R::one())
            .close(builder.contents, Quantity::Charge, Pool::Alkalinity);
        let back = out.reversed("into the soil");
        let process = PhosphorusExchange {
            litres_per_day: exchange_l_per_day(builder),
            temperature: builder.theta("th_ex", "T_ref_plant"),
        };
        (process, vec![out, back])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let rate = self.litres_per_day
            * water.factor(self.temperature)
            * (water.pore_phosphate - water.phosphate);
        rates[0] = rate.floor_zero();
        rates[1] = (-rate).floor_zero();
    }
}
