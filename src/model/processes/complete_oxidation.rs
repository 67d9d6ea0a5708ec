//! Complete oxidation: a slow, thrifty guild turns ammonia straight into nitrate.
//!
//! It starts late and scarce, grows slowly, and in the end holds ammonia far below what the
//! ammonia oxidisers need.
//!
//! ```text
//! r = act·μ_K(T)·TAN/(K_NHK + TAN)·O2/(K_O + O2)·f_pH·f_C·K_I/(K_I + HNO2)·XK        mg COD/day
//! overgrowth = r·min(1, L_A)
//! ```

use crate::base::real::Real;
use crate::base::sources::{KITS_2017, calibrated};
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
pub struct CompleteOxidation<R> {
    limits: GuildLimits<R>,
    half_tan: R,
    half_nitrous_acid: R,
}

impl<R: Real> CompleteOxidation<R> {
    /// Growth with ammonia in plenty, mg COD/day.
    #[inline(always)]
    pub fn potential(&self, water: &Water<R>) -> R {
        water.films.active
            * water.films.speed[2]
            * self.limits.oxygen(water)
            * self.limits.acidity_and_carbon(water)
            * inhibition(water.nitrous_acid, self.half_nitrous_acid)
            * water.amount(Pool::CompleteOxidisers)
    }
}

impl<R: Real> Process<R> for CompleteOxidation<R> {
    const ID: &'static str = "complete_oxidation";
    const WHAT: &'static str = "complete oxidisers turn ammonia into nitrate and grow";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "K_NHK",
            "total ammonia at half speed of complete oxidisers",
            "mg N/L",
            0.02,
            (0.005, 0.1),
            calibrated(&[KITS_2017], ""),
        ),
        parameter(
            "K_O_K",
            "oxygen at half speed of complete oxidisers",
            "mg/L",
            0.30,
            (0.1, 0.6),
            calibrated(&[KITS_2017], ""),
        ),
        parameter(
            "pK1_K",
            "pH at which complete oxidisers run at half speed",
            "1",
            5.5,
            (5.0, 6.0),
            calibrated(&[KITS_2017], ""),
        ),
        parameter(
            "XK0",
            "complete oxidisers at filling, seeding level 1",
            "mg COD/L",
            6e-6,
            (6e-7, 6e-3),
            calibrated(&[], "a tenth of the ammonia oxidisers"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let growth = Row::new("growth")
            .put(Pool::CompleteOxidisers, R::one())
            .put(Pool::Nitrate, R::one() / builder.get("Y_K"));
        let growth = closed_by_water(growth, builder.contents);
        let overgrowth = film_lost(builder, "overgrowth", Pool::CompleteOxidisers);
        let process = CompleteOxidation {
            limits: GuildLimits::new(builder, "K_O_K", "pK1_K"),
            half_tan: builder.get("K_NHK"),
            half_nitrous_acid: builder.get("K_I_FNA_A"),
        };
        (process, vec![growth, overgrowth])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let growth = self.potential(water) * monod(water.tan, self.half_tan);
        rates[0] = growth;
        rates[1] = growth * Films::sloughing(water.films.ammonia_crowding);
    }
}
