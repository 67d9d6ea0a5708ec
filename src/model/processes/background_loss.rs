//! Background loss: old leaves of a stand become detritus.
//!
//! ```text
//! r = m_loss·B        g/day, and its nitrogen m_loss·NB        mg N/day
//! ```

use crate::base::real::Real;
use crate::model::litter::Litter;
use crate::model::parameter::ParameterSpec;
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

const ROWS: usize = 2;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct BackgroundLoss<R> {
    per_day: Vec<R>,
}

impl<R: Real> Process<R> for BackgroundLoss<R> {
    const ID: &'static str = "background_loss";
    const WHAT: &'static str = "old leaves become detritus";
    const PARAMETERS: &'static [ParameterSpec] = &[];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let litter = Litter::new(builder);
        let mut rows = Vec::new();
        let mut per_day = Vec::new();
        for (stand, plan) in builder.setup.stands.iter().enumerate() {
            per_day.push(builder.get(&plan.group.id("m_loss")));
            let mass = Row::new(format!("{}, tissue", plan.name))
                .of_stand(stand)
                .put(Pool::Biomass(stand), -R::one());
            let nitrogen = Row::new(format!("{}, nitrogen", plan.name))
                .of_stand(stand)
                .put(Pool::TissueN(stand), -R::one());
            rows.extend([
                litter.tissue(mass, R::one()),
                litter.nitrogen(nitrogen, R::one()),
            ]);
        }
        (BackgroundLoss { per_day }, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        for (stand, per_day) in self.per_day.iter().enumerate() {
            rates[ROWS * stand] = *per_day * water.amount(Pool::Biomass(stand));
            rates[ROWS * stand + 1] = *per_day * water.amount(Pool::TissueN(stand));
        }
    }
}
