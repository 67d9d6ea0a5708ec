//! Top-up: evaporated water is replaced as it goes, with water at room temperature.
//!
//! ```text
//! r = evaporation, or nothing without automatic top-up        L/day
//! ```

use crate::base::real::Real;
use crate::model::component::Component;
use crate::model::conserved::{Flux, QUANTITIES};
use crate::model::parameter::ParameterSpec;
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

use super::evaporation::Evaporation;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct TopUp<R> {
    evaporation: Evaporation<R>,
    /// Whether there is any.
    pub(super) automatic: bool,
}

impl<R: Real> TopUp<R> {
    /// Water added, L/day.
    #[inline(always)]
    pub(super) fn l_per_day(&self, water: &Water<R>) -> R {
        if self.automatic {
            self.evaporation.l_per_day(water)
        } else {
            R::zero()
        }
    }
}

impl<R: Real> Process<R> for TopUp<R> {
    const ID: &'static str = "top_up";
    const WHAT: &'static str = "evaporated water is replaced";
    const PARAMETERS: &'static [ParameterSpec] = &[];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let mut row = (Row::new("").may_be_nothing()).put(Pool::Volume, R::one());
        if let Some(water) = builder.setup.surroundings.top_up {
            for (pool, per_l) in water.dissolved() {
                row = row.put(pool, per_l);
            }
        }
        for quantity in QUANTITIES {
            row = row.close(
                builder.contents,
                quantity,
                Component::Outside(Flux::TopUp, quantity),
            );
        }
        let process = TopUp {
            evaporation: Evaporation::new(builder).0,
            automatic: builder.setup.surroundings.top_up.is_some(),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.l_per_day(water);
    }
}
