//! Algae loss: algae respire, die and become leachable detritus.
//!
//! ```text
//! respiration r = r_Gr·th_G^(T − 20)·G·O2/(K_OD + O2)        death r = r_Gd·th_G^(T − 20)·G        g/day
//! ```

use crate::base::real::Real;
use crate::base::sources::{ECOSIM, published};
use crate::model::conserved::Quantity;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct AlgaeLoss<R> {
    respiration: R,
    death: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for AlgaeLoss<R> {
    const ID: &'static str = "algae_loss";
    const WHAT: &'static str = "algae respire and die";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "r_Gr",
            "respiration of algae at 20 °C",
            "/day",
            0.1,
            (0.05, 0.2),
            published(&[ECOSIM], ""),
        ),
        parameter(
            "r_Gd",
            "death of algae at 20 °C",
            "/day",
            0.1,
            (0.05, 0.2),
            published(&[ECOSIM], ""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let respiration = Row::new("respiration")
            .put(Pool::Algae, -R::one())
            .burn(builder.contents);
        let death = Row::new("death")
            .put(Pool::Algae, -R::one())
            .put(Pool::FastDetritus, R::one())
            .close(builder.contents, Quantity::Nitrogen, Pool::FastDetritusN);
        let process = AlgaeLoss {
            respiration: builder.get("r_Gr"),
            death: builder.get("r_Gd"),
            temperature: builder.theta("th_G", "T_ref_bio"),
        };
        (process, vec![respiration, death])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let algae = water.amount(Pool::Algae) * water.factor(self.temperature);
        rates[0] = self.respiration * algae * water.oxic;
        rates[1] = self.death * algae;
    }
}
