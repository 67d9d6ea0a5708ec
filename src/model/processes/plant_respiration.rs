//! Plant respiration: stands burn tissue day and night.
//!
//! ```text
//! r = 24·R_d·th_R^(T − 25)·B·O2/(K_OD + O2)/o        g/day
//! ```

use crate::base::real::Real;
use crate::base::sources::published;
use crate::model::conserved::Quantity;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct PlantRespiration<R> {
    per_day: Vec<R>,
    temperature: Factor,
}

impl<R: Real> Process<R> for PlantRespiration<R> {
    const ID: &'static str = "plant_respiration";
    const WHAT: &'static str = "stands burn tissue day and night";
    const PARAMETERS: &'static [ParameterSpec] = &[parameter(
        "th_R",
        "temperature factor of plant respiration",
        "1",
        1.07,
        (1.05, 1.10),
        published(&[], "abstract on a watermilfoil, 15 to 35 °C"),
    )];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let mut rows = Vec::new();
        let mut per_day = Vec::new();
        for (stand, plan) in builder.setup.stands.iter().enumerate() {
            let burnt = Pool::Biomass(stand);
            let oxygen_per_g = builder.contents.of(burnt.into(), Quantity::OxygenDemand);
            per_day.push(
                R::of(24.0) * builder.get(&plan.group.id("R_d"))
                    / oxygen_per_g.expect("tissue burns"),
            );
            rows.push(
                Row::new(&plan.name)
                    .of_stand(stand)
                    .put(burnt, -R::one())
                    .from_water(builder.contents),
            );
        }
        (
            PlantRespiration {
                per_day,
                temperature: builder.theta("th_R", "T_ref_plant"),
            },
            rows,
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let speed = water.factor(self.temperature) * water.oxic;
        for (stand, (rate, per_day)) in rates.iter_mut().zip(&self.per_day).enumerate() {
            *rate = *per_day * speed * water.amount(Pool::Biomass(stand));
        }
    }
}
