//! Nitrite oxidation: nitrite oxidisers turn nitrite into nitrate and grow on it.
//!
//! ```text
//! r = act·μ_N(T)·NO2/(K_NO2 + NO2)·O2/(K_O + O2)·f_pH·f_C·K_FA/(K_FA + NH3)·K_FNA/(K_FNA + HNO2)·XN
//! overgrowth = r·min(1, L_N)        mg COD/day
//! ```

use crate::base::real::Real;
use crate::base::sources::{
    ANTHONISEN_1976, ECOSIM, HIATT_GRADY_2008, SIN_2008, USHIKI_2017, calibrated, derived,
    published,
};
use crate::model::films::Films;
use crate::model::guild::{GuildLimits, closed_by_water, film_lost};
use crate::model::limitation::{inhibition, monod};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct NitriteOxidation<R> {
    limits: GuildLimits<R>,
    half_nitrite: R,
    half_free_ammonia: R,
    half_nitrous_acid: R,
}

impl<R: Real> NitriteOxidation<R> {
    /// Share of full speed that pH, carbon and inhibition leave, 0 to 1.
    #[inline(always)]
    pub fn ease(&self, water: &Water<R>) -> R {
        self.limits.acidity_and_carbon(water)
            * inhibition(water.free_ammonia, self.half_free_ammonia)
            * inhibition(water.nitrous_acid, self.half_nitrous_acid)
    }
    /// Growth with nitrite in plenty, mg COD/day.
    #[inline(always)]
    pub fn potential(&self, water: &Water<R>) -> R {
        water.films.active
            * water.films.speed[1]
            * self.limits.oxygen(water)
            * self.ease(water)
            * water.amount(Pool::NitriteOxidisers)
    }
}

impl<R: Real> Process<R> for NitriteOxidation<R> {
    const ID: &'static str = "nitrite_oxidation";
    const WHAT: &'static str = "nitrite oxidisers turn nitrite into nitrate and grow";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "K_NO2",
            "nitrite at half speed of nitrite oxidisers",
            "mg N/L",
            0.50,
            (0.05, 1.5),
            published(&[ECOSIM, USHIKI_2017], "low end Nitrospira"),
        ),
        parameter(
            "K_O_NOB",
            "oxygen at half speed of nitrite oxidisers",
            "mg/L",
            0.60,
            (0.1, 1.5),
            published(&[SIN_2008, USHIKI_2017], ""),
        ),
        parameter(
            "pK1_N",
            "pH at which nitrite oxidisers run at half speed",
            "1",
            5.8,
            (5.2, 6.5),
            calibrated(
                &[],
                "acid-tolerant strains grow best at pH 6; range published",
            ),
        ),
        parameter(
            "K_I_FA",
            "free ammonia that halves nitrite oxidisers",
            "mg N/L",
            0.50,
            (0.10, 4.0),
            published(&[HIATT_GRADY_2008, USHIKI_2017], "0.2 to 0.5; 0.85 to 4.3"),
        ),
        parameter(
            "K_I_FNA_N",
            "nitrous acid that halves nitrite oxidisers",
            "mg N/L",
            0.04,
            (0.02, 0.26),
            published(&[HIATT_GRADY_2008, ANTHONISEN_1976], "high end from memory"),
        ),
        parameter(
            "XN0",
            "nitrite oxidisers at filling, seeding level 1",
            "mg COD/L",
            2e-5,
            (2e-6, 2e-2),
            derived("a third of the ammonia oxidisers"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let per_yield = R::one() / builder.get("Y_NOB");
        let growth = Row::new("growth")
            .put(Pool::NitriteOxidisers, R::one())
            .put(Pool::Nitrite, -per_yield)
            .put(Pool::Nitrate, per_yield);
        let growth = closed_by_water(growth, builder.contents);
        let overgrowth = film_lost(builder, "overgrowth", Pool::NitriteOxidisers);
        let process = NitriteOxidation {
            limits: GuildLimits::new(builder, "K_O_NOB", "pK1_N"),
            half_nitrite: builder.get("K_NO2"),
            half_free_ammonia: builder.get("K_I_FA"),
            half_nitrous_acid: builder.get("K_I_FNA_N"),
        };
        (process, vec![growth, overgrowth])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let growth = self.potential(water) * monod(water.nitrite, self.half_nitrite);
        rates[0] = growth;
        rates[1] = growth * Films::sloughing(water.films.nitrite_crowding);
    }
}
