//! Denitrification: microbes in the soil breathe nitrate; nitrogen gas leaves.
//!
//! ```text
//! NO3 + 1.25 CH2O + H+ → 0.5 N2 + 1.25 CO2 + 1.75 H2O
//! r = k_den·A_bed·th_soil^(T − 20)·NO3/(K_den + NO3)        mg N/day
//! ```

use crate::base::real::Real;
use crate::base::sources::{VERAART_2011, memory, published};
use crate::base::units::{NITROGEN_G_PER_MOL, OXYGEN_G_PER_MOL};
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::equivalents::{MEQ_PER_MG_N, O2_PER_N_TO_NITRITE};
use crate::model::limitation::monod;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// Carbon burnt per nitrate, mol/mol: five electrons of nitrate over four of carbon.
const CARBON_PER_NITRATE: f64 = 1.25;

/// Oxygen demand of nitrogen gas, mg O2 per mg N (N2 lies half way from NH3 to nitrite).
const O2_PER_N_AS_GAS: f64 = -O2_PER_N_TO_NITRITE / 2.0;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Denitrification<R> {
    fastest: R,
    half: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for Denitrification<R> {
    const ID: &'static str = "denitrification";
    const WHAT: &'static str = "nitrate is breathed in the soil and leaves as nitrogen gas";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "k_den",
            "fastest denitrification at 20 °C",
            "mg N/m²/day",
            3.0,
            (0.9, 7.0),
            published(&[VERAART_2011], "0.9 to 7.0"),
        ),
        parameter(
            "K_den",
            "nitrate at half speed of denitrification",
            "mg N/L",
            0.5,
            (0.1, 1.0),
            memory(&[], ""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let gas = |quantity| Component::Outside(Flux::NitrogenGas, quantity);
        let mmol_c = R::of(CARBON_PER_NITRATE / NITROGEN_G_PER_MOL);
        let burnt = R::of(CARBON_PER_NITRATE * OXYGEN_G_PER_MOL / NITROGEN_G_PER_MOL);
        let row = Row::new("")
            .put(Pool::Nitrate, -R::one())
            .put(gas(Quantity::Nitrogen), R::one())
            .put(gas(Quantity::OxygenDemand), R::of(O2_PER_N_AS_GAS))
            .put(Pool::Dic, mmol_c)
            .put(Pool::Alkalinity, R::of(MEQ_PER_MG_N))
            .put(
                Component::Outside(Flux::SoilCarbon, Quantity::Carbon),
                -mmol_c,
            )
            .put(
                Component::Outside(Flux::SoilCarbon, Quantity::OxygenDemand),
                -burnt,
            );
        let soil = builder.setup.has_soil();
        let process = Denitrification {
            fastest: if soil {
                builder.get("k_den") * builder.setup.tank.bed_m2
            } else {
                R::zero()
            },
            half: builder.get("K_den"),
            temperature: builder.theta("th_soil", "T_ref_bio"),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.fastest * water.factor(self.temperature) * monod(water.nitrate, self.half);
    }
}
