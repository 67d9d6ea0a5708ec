//! Mineralisation: detritus is burnt with oxygen and its nutrients return to the water.
//!
//! ```text
//! r = k·th_D^(T − 20)·O2/(K_OD + O2)·D        g/day, and alike for its nitrogen, mg N/day
//! ```

use crate::base::real::Real;
use crate::base::sources::{ENRIQUEZ_1993, memory, published};
use crate::model::conserved::Quantity;
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Mineralisation<R> {
    fast_per_day: R,
    slow_per_day: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for Mineralisation<R> {
    const ID: &'static str = "mineralisation";
    const WHAT: &'static str = "detritus is burnt and its nutrients return";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "k_Dfast",
            "decay of leachable detritus at 20 °C",
            "/day",
            0.5,
            (0.3, 1.0),
            memory(&[], "particles in a river model 0.5"),
        ),
        parameter(
            "k_Ds",
            "decay of slow detritus at 20 °C",
            "/day",
            0.030,
            (0.014, 0.045),
            published(
                &[ENRIQUEZ_1993],
                "seven macrophytes 0.014 to 0.045, by abstract",
            ),
        ),
        parameter(
            "th_D",
            "temperature factor of decay of detritus",
            "1",
            1.08,
            (1.05, 1.124),
            published(&[], "a waterweed 1.124, by abstract"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let contents = builder.contents;
        let tissue = |part: &str, pool: Pool, group: usize| {
            Row::new(part)
                .of_stand(group)
                .put(pool, -R::one())
                .from_water(contents)
        };
        let nitrogen = |part: &str, pool: Pool, group: usize| {
            Row::new(part)
                .of_stand(group)
                .put(pool, -R::one())
                .put(Pool::Tan, R::one())
                .close(contents, Quantity::Charge, Pool::Alkalinity)
        };
        let rows = vec![
            tissue("leachable", Pool::FastDetritus, 0),
            nitrogen("nitrogen of the leachable", Pool::FastDetritusN, 0),
            tissue("slow", Pool::SlowDetritus, 1),
            nitrogen("nitrogen of the slow", Pool::SlowDetritusN, 1),
        ];
        let process = Mineralisation {
            fast_per_day: builder.get("k_Dfast"),
            slow_per_day: builder.get("k_Ds"),
            temperature: builder.theta("th_D", "T_ref_bio"),
        };
        (process, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let speed = water.factor(self.temperature) * water.oxic;
        let (fast, slow) = (self.fast_per_day * speed, self.slow_per_day * speed);
        rates[0] = fast * water.amount(Pool::FastDetritus);
        rates[1] = fast * water.amount(Pool::FastDetritusN);
        rates[2] = slow * water.amount(Pool::SlowDetritus);
        rates[3] = slow * water.amount(Pool::SlowDetritusN);
    }
}
