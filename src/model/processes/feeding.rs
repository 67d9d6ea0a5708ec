//! Feeding: animals eat, excrete ammonia and phosphate and leave faeces; the rest stays in them.
//!
//! ```text
//! nitrogen eaten = N_feed·protein·feed        mg N/day: e_N of it to ammonia, fec_N to faeces
//! feed eaten                                  g/day:    e_P·P_feed mg P to phosphate, feces g to detritus
//! ```

use crate::base::real::Real;
use crate::base::sources::{TIMMONS_EBELING, derived, memory, practice};
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Feeding<R> {
    number: std::marker::PhantomData<R>,
}

impl<R: Real> Process<R> for Feeding<R> {
    const ID: &'static str = "feeding";
    const WHAT: &'static str = "animals eat, excrete and leave faeces";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "e_N",
            "share of feed nitrogen excreted as ammonia",
            "1",
            0.575,
            (0.39, 0.63),
            derived("0.092 kg N per kg feed and protein, from memory of Timmons & Ebeling"),
        ),
        parameter(
            "e_P",
            "share of feed phosphorus excreted dissolved",
            "1",
            0.30,
            (0.1, 0.5),
            memory(&[TIMMONS_EBELING], ""),
        ),
        parameter(
            "feces",
            "faeces per feed, dry weight",
            "g/g",
            0.20,
            (0.1, 0.3),
            memory(&[], ""),
        ),
        parameter(
            "fec_N",
            "share of feed nitrogen in faeces",
            "1",
            0.15,
            (0.1, 0.2),
            memory(&[], ""),
        ),
        parameter(
            "N_feed",
            "nitrogen per protein",
            "mg/g",
            160.0,
            (155.0, 165.0),
            derived("protein holds 16 % nitrogen"),
        ),
        parameter(
            "P_feed",
            "phosphorus in feed",
            "mg/g",
            10.0,
            (8.0, 14.0),
            memory(&[], ""),
        ),
        parameter(
            "feed",
            "ration of the animals, share of their mass a day",
            "%/day",
            2.0,
            (1.0, 3.0),
            memory(&[], ""),
        ),
        parameter(
            "protein",
            "protein share of the feed",
            "1",
            0.40,
            (0.3, 0.5),
            practice(""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let contents = builder.contents;
        let animals = |quantity| Component::Outside(Flux::AnimalsAndFeed, quantity);
        let nitrogen = Row::new("nitrogen")
            .put(Pool::Tan, builder.get("e_N"))
            .put(Pool::FastDetritusN, builder.get("fec_N"))
            .close(contents, Quantity::Nitrogen, animals(Quantity::Nitrogen))
            .close(contents, Quantity::Charge, Pool::Alkalinity);
        let mut rest = Row::new("phosphorus and faeces")
            .put(Pool::Phosphate, builder.get("e_P") * builder.get("P_feed"))
            .put(Pool::FastDetritus, builder.get("feces"));
        for quantity in [
            Quantity::Carbon,
            Quantity::Phosphorus,
            Quantity::Potassium,
            Quantity::Iron,
            Quantity::OxygenDemand,
        ] {
            rest = rest.close(contents, quantity, animals(quantity));
        }
        let rest = rest.close(contents, Quantity::Charge, Pool::Alkalinity);
        (
            Feeding {
                number: std::marker::PhantomData,
            },
            vec![nitrogen, rest],
        )
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = water.held.feed_mg_n_per_day;
        rates[1] = water.held.feed_g_per_day;
    }
}
