//! Fish respiration: animals take oxygen and give carbon dioxide.
//!
//! ```text
//! r = 24·m_O2·th_fish^(T − 24)·animals·O2/(K_OD + O2)        mg O2/day, CO2 = RQ mol/mol
//! ```

use crate::base::real::Real;
use crate::base::sources::{LUCAS_PRIEDE_1992, memory, published};
use crate::base::units::OXYGEN_G_PER_MOL;
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct FishRespiration<R> {
    per_g_and_day: R,
    temperature: Factor,
}

impl<R: Real> Process<R> for FishRespiration<R> {
    const ID: &'static str = "fish_respiration";
    const WHAT: &'static str = "animals take oxygen and give carbon dioxide";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "m_O2",
            "oxygen taken by small fish at 24 °C",
            "mg O2/g/h",
            0.56,
            (0.364, 0.80),
            published(&[LUCAS_PRIEDE_1992], "routine in groups; low end standard"),
        ),
        parameter(
            "th_fish",
            "temperature factor of fish",
            "1",
            1.08,
            (1.05, 1.1),
            memory(&[], ""),
        ),
        parameter(
            "RQ",
            "carbon dioxide given per oxygen taken by animals, mol",
            "1",
            0.9,
            (0.85, 1.0),
            memory(&[], ""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let animals = |quantity| Component::Outside(Flux::AnimalsAndFeed, quantity);
        let row = Row::new("")
            .put(Pool::Oxygen, -R::one())
            .put(Pool::Dic, builder.get("RQ") / R::of(OXYGEN_G_PER_MOL))
            .close(
                builder.contents,
                Quantity::Carbon,
                animals(Quantity::Carbon),
            )
            .close(
                builder.contents,
                Quantity::OxygenDemand,
                animals(Quantity::OxygenDemand),
            );
        let process = FishRespiration {
            per_g_and_day: R::of(24.0) * builder.get("m_O2"),
            temperature: builder.theta("th_fish", "T_ref_fish"),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] =
            self.per_g_and_day * water.factor(self.temperature) * water.held.animals_g * water.oxic;
    }
}
