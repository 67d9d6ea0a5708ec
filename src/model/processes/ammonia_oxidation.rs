//! Ammonia oxidation: ammonia oxidisers turn ammonia into nitrite and grow on it.
//!
//! At the ceiling of the surfaces new growth sloughs off and is burnt, but oxidation goes on.
//!
//! ```text
//! r = act·μ_A(T)·TAN/(K_NH + TAN)·O2/(K_O + O2)·f_pH·f_C·K_I/(K_I + HNO2)·XA        mg COD/day
//! overgrowth = r·min(1, L_A)
//! ```

use crate::base::real::Real;
use crate::base::sources::{
    ANTHONISEN_1976, GUISASOLA_2007, HIATT_GRADY_2008, SIN_2008, calibrated, derived, published,
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
pub struct AmmoniaOxidation<R> {
    limits: GuildLimits<R>,
    half_tan: R,
    half_nitrous_acid: R,
}

impl<R: Real> AmmoniaOxidation<R> {
    /// Growth with ammonia in plenty, mg COD/day.
    #[inline(always)]
    pub fn potential(&self, water: &Water<R>) -> R {
        water.films.active
            * water.films.speed[0]
            * self.limits.oxygen(water)
            * self.limits.acidity_and_carbon(water)
            * inhibition(water.nitrous_acid, self.half_nitrous_acid)
            * water.amount(Pool::AmmoniaOxidisers)
    }
}

impl<R: Real> Process<R> for AmmoniaOxidation<R> {
    const ID: &'static str = "ammonia_oxidation";
    const WHAT: &'static str = "ammonia oxidisers turn ammonia into nitrite and grow";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "K_NH",
            "total ammonia at half speed of ammonia oxidisers",
            "mg N/L",
            0.50,
            (0.14, 1.0),
            published(&[SIN_2008], ""),
        ),
        parameter(
            "K_O_AOB",
            "oxygen at half speed of ammonia oxidisers",
            "mg/L",
            0.60,
            (0.2, 1.45),
            published(&[HIATT_GRADY_2008, SIN_2008], ""),
        ),
        parameter(
            "pK1_A",
            "pH at which ammonia oxidisers run at half speed",
            "1",
            6.3,
            (5.8, 6.8),
            calibrated(&[], "activity usually stops near pH 6; range published"),
        ),
        parameter(
            "pK2",
            "high pH at which nitrifiers run at half speed",
            "1",
            9.5,
            (9.0, 10.0),
            calibrated(&[], ""),
        ),
        parameter(
            "K_C",
            "inorganic carbon at half speed of nitrifiers",
            "mmol/L",
            0.10,
            (0.02, 0.5),
            published(
                &[GUISASOLA_2007],
                "0.1 in a model of recirculating aquaculture; high end from memory",
            ),
        ),
        parameter(
            "K_I_FNA_A",
            "nitrous acid that halves ammonia oxidisers and complete oxidisers",
            "mg N/L",
            0.10,
            (0.05, 2.8),
            published(&[HIATT_GRADY_2008, ANTHONISEN_1976], "high end from memory"),
        ),
        parameter(
            "XA0",
            "ammonia oxidisers at filling, seeding level 1",
            "mg COD/L",
            6e-5,
            (6e-6, 6e-2),
            derived("10⁷ cells in 50 L"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let growth = Row::new("growth")
            .put(Pool::AmmoniaOxidisers, R::one())
            .put(Pool::Nitrite, R::one() / builder.get("Y_AOB"));
        let growth = closed_by_water(growth, builder.contents);
        let overgrowth = film_lost(builder, "overgrowth", Pool::AmmoniaOxidisers);
        let process = AmmoniaOxidation {
            limits: GuildLimits::new(builder, "K_O_AOB", "pK1_A"),
            half_tan: builder.get("K_NH"),
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
