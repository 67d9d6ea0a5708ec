//! Root uptake: stands store ammonium from the pore water of the soil.
//!
//! The root gives a proton for the ammonium; it takes the freed site, so alkalinity stays and the
//! acid capacity of the soil grows.
//!
//! ```text
//! r = 24·V_NH·B·w_N·sat        mg N/day (w_N and sat as in leaf uptake)
//! ```

use crate::base::real::Real;
use crate::model::conserved::Quantity;
use crate::model::parameter::ParameterSpec;
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

use super::leaf_uptake::Appetite;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct RootUptake<R> {
    fastest: Vec<R>,
    appetite: Appetite<R>,
}

impl<R: Real> Process<R> for RootUptake<R> {
    const ID: &'static str = "root_uptake";
    const WHAT: &'static str = "roots store nitrogen from the soil";
    const PARAMETERS: &'static [ParameterSpec] = &[];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let mut rows = Vec::new();
        let mut fastest = Vec::new();
        for (stand, plan) in builder.setup.stands.iter().enumerate() {
            fastest.push(R::of(24.0) * builder.get(&plan.group.id("V_NH")));
            rows.push(
                Row::new(&plan.name)
                    .of_stand(stand)
                    .put(Pool::SoilAmmonium, -R::one())
                    .put(Pool::TissueN(stand), R::one())
                    .close(builder.contents, Quantity::Charge, Pool::SoilAcid),
            );
        }
        (
            RootUptake {
                fastest,
                appetite: Appetite::new(builder),
            },
            rows,
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        for (stand, rate) in rates.iter_mut().enumerate() {
            *rate = self.fastest[stand]
                * self.appetite.roots(water, stand)
                * self.appetite.hungry_g(water, stand);
        }
    }
}
