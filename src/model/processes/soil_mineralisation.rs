//! Soil mineralisation: slow organic nitrogen of the soil becomes exchangeable ammonium.
//!
//! ```text
//! r = k_min·th_soil^(T − 20)·NO        mg N/day
//! ```

use crate::base::real::Real;
use crate::base::sources::{SOIL_SCIENCE_1983, calibrated, memory};
use crate::model::conserved::Quantity;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct SoilMineralisation<R> {
    per_day: R,
    temperature: Factor,
}

impl<R: Real> SoilMineralisation<R> {
    /// Nitrogen mineralised, mg N/day.
    #[inline(always)]
    pub(super) fn rate(&self, water: &Water<R>) -> R {
        self.per_day * water.factor(self.temperature) * water.amount(Pool::SoilOrganicN)
    }
}

impl<R: Real> Process<R> for SoilMineralisation<R> {
    const ID: &'static str = "soil_mineralisation";
    const WHAT: &'static str = "organic nitrogen of the soil becomes ammonium";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "N_o0",
            "slow organic nitrogen of the soil at filling",
            "mg N/kg",
            200.0,
            (50.0, 600.0),
            calibrated(&[SOIL_SCIENCE_1983], "with k_min gives 46 mg N/m²/day"),
        ),
        parameter(
            "k_min",
            "mineralisation of the soil at 20 °C",
            "/day",
            0.0035,
            (0.0014, 0.014),
            calibrated(&[SOIL_SCIENCE_1983], "45 mg N/m²/day"),
        ),
        parameter(
            "th_soil",
            "temperature factor of soil microbes",
            "1",
            1.08,
            (1.05, 1.12),
            memory(&[], ""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let row = Row::new("")
            .put(Pool::SoilOrganicN, -R::one())
            .put(Pool::SoilAmmonium, R::one())
            .close(builder.contents, Quantity::Charge, Pool::Alkalinity);
        let process = SoilMineralisation {
            per_day: builder.get("k_min"),
            temperature: builder.theta("th_soil", "T_ref_bio"),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.rate(water);
    }
}
