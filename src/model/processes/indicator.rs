//! Indicator: the colour liquid follows the carbon dioxide of the water with a lag.
//!
//! ```text
//! dIND/dt = 24·(CO2 − IND)/tau_ind        mg/L per day
//! ```

use crate::base::real::Real;
use crate::base::sources::practice;
use crate::model::following::Following;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Indicator<R> {
    per_day: R,
}

impl<R: Real> Indicator<R> {
    /// How the indicator follows the water from now on.
    #[inline(always)]
    pub fn following(&self, water: &Water<R>) -> Following<R> {
        Following {
            per_day: self.per_day,
            from: water.amount(Pool::Indicator),
        }
    }
}

impl<R: Real> Process<R> for Indicator<R> {
    const ID: &'static str = "indicator";
    const WHAT: &'static str = "the CO2 indicator follows the water with a lag";
    const PARAMETERS: &'static [ParameterSpec] = &[parameter(
        "tau_ind",
        "lag of the CO2 indicator",
        "h",
        1.5,
        (1.0, 2.0),
        practice("1 to 2 h to settle"),
    )];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let process = Indicator {
            per_day: R::of(24.0) / builder.get("tau_ind"),
        };
        (process, vec![Row::new("").put(Pool::Indicator, R::one())])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.per_day * (water.co2_mg_per_l() - water.amount(Pool::Indicator));
    }
}
