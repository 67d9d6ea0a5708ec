//! Soil exchange: ammonium moves between the pore water of the soil and the water above it.
//!
//! The soil holds ammonium on exchange sites in balance with its pore water; what the pore water
//! has more than the water above it comes out, and goes back in if the water above has more.
//! An ammonium ion that leaves a site is replaced by a base cation, so alkalinity stays.
//!
//! ```text
//! C_p = NX/(m·Kd + V_pw)
//! r = k_ex·th_ex^(T − 25)·1000·A_bed·(C_p − TAN/V)        mg N/day, both ways
//! ```

use crate::base::real::Real;
use crate::base::sources::{SOIL_SCIENCE_1983, calibrated, derived, memory};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct SoilExchange<R> {
    litres_per_day: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for SoilExchange<R> {
    const ID: &'static str = "soil_exchange";
    const WHAT: &'static str = "ammonium moves between soil and water";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "q0",
            "exchangeable nitrogen of the soil at filling",
            "mg N/kg",
            90.0,
            (40.0, 250.0),
            calibrated(&[], "back-calculated from readings of common practice"),
        ),
        parameter(
            "Kd",
            "ammonium held by the soil per pore water",
            "L/kg",
            10.0,
            (3.0, 30.0),
            memory(&[], "soils and fine sediments 1 to 30"),
        ),
        parameter(
            "k_ex",
            "exchange velocity between soil and water at 25 °C",
            "m/day",
            0.047,
            (0.015, 0.15),
            calibrated(&[SOIL_SCIENCE_1983], "fluxes 7 to 808 mg N/m²/day"),
        ),
        parameter(
            "th_ex",
            "temperature factor of soil exchange",
            "1",
            1.025,
            (1.02, 1.03),
            memory(&[], "diffusion"),
        ),
        parameter(
            "rho_soil",
            "dry mass per bulk volume of soil",
            "kg/L",
            0.85,
            (0.75, 0.95),
            memory(&[], ""),
        ),
        parameter(
            "por",
            "pore water per bulk volume of soil",
            "1",
            0.60,
            (0.5, 0.7),
            memory(&[], ""),
        ),
        parameter(
            "soil_mild",
            "a mild soil's nutrients and acid capacity, as a share of a medium one",
            "1",
            0.5,
            (0.3, 0.8),
            calibrated(&[], "class word"),
        ),
        parameter(
            "soil_rich",
            "a rich soil's nutrients and acid capacity, as a multiple of a medium one",
            "1",
            2.0,
            (1.4, 3.0),
            derived("class word; twice medium"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let out = Row::new("into the water")
            .put(Pool::SoilAmmonium, -R::one())
            .put(Pool::Tan, R::one());
        let back = out.reversed("into the soil");
        let process = SoilExchange {
            litres_per_day: exchange_l_per_day(builder),
            temperature: builder.theta("th_ex", "T_ref_plant"),
        };
        (process, vec![out, back])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let rate =
            self.litres_per_day * water.factor(self.temperature) * (water.pore_tan - water.tan);
        rates[0] = rate.floor_zero();
        rates[1] = (-rate).floor_zero();
    }
}

/// Water exchanged between soil and tank at 25 °C, L/day; nothing without soil.
pub(super) fn exchange_l_per_day<R: Real>(builder: &Builder<'_, R>) -> R {
    if builder.setup.has_soil() {
        builder.get("k_ex") * R::of(1000.0) * builder.setup.tank.bed_m2
    } else {
        R::zero()
    }
}
