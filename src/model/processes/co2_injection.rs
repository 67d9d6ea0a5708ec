//! CO2 injection: gas of the cylinder dissolves; a controller may close the valve near a target.
//!
//! ```text
//! r = gas [· within 0 to 1: (cut-off − CO2)/cut_band]        mmol/day dissolved
//! ```

use crate::base::real::Real;
use crate::base::sources::{definition, memory, practice};
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Co2Injection<R> {
    band: R,
}

impl<R: Real> Process<R> for Co2Injection<R> {
    const ID: &'static str = "co2_injection";
    const WHAT: &'static str = "gas of the cylinder dissolves";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "eta_CO2",
            "share of the gas that dissolves",
            "1",
            0.7,
            (0.3, 1.0),
            practice("bell 0.3 to a closed reactor 1.0; no measurement found"),
        ),
        parameter(
            "cut_band",
            "CO2 below the cut-off at which a controller begins to close",
            "mmol/L",
            0.05,
            (0.02, 0.1),
            memory(&[], "fixed"),
        ),
        parameter(
            "d_bub",
            "diameter of a bubble in a counter",
            "mm",
            4.5,
            (3.0, 6.0),
            memory(&[], "a bubble's mass goes with its cube"),
        ),
        parameter(
            "rho_gas",
            "density of carbon dioxide at 25 °C and 1 atm",
            "g/L",
            1.80,
            (1.80, 1.80),
            definition("ideal gas: 44.01 g/mol over 24.47 L/mol"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let row = Row::new("").put(Pool::Dic, R::one()).close(
            builder.contents,
            Quantity::Carbon,
            Component::Outside(Flux::InjectedGas, Quantity::Carbon),
        );
        (
            Co2Injection {
                band: builder.get("cut_band"),
            },
            vec![row],
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let gas = water.held.gas_mmol_per_day;
        rates[0] = match water.held.cut_off_mmol_per_l {
            None => gas,
            Some(cut_off) => gas * ((cut_off - water.co2) / self.band).unit(),
        };
    }
}
