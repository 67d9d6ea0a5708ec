//! Evaporation: water leaves the surface; what is dissolved stays.
//!
//! ```text
//! E = E_act·lid·E_coef·(p_w(T) − RH·p_w(T_room))/L_v·86400·A        kg/day, p_w in kPa, not below 0
//! ```

use crate::base::real::Real;
use crate::base::sources::{SMITH_1998, memory, practice, published};
use crate::chemistry::air::{self, KPA_PER_ATM};
use crate::model::component::Component;
use crate::model::conserved::{Flux, Quantity};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::temperature::Factor;
use crate::model::water::Water;

/// Seconds in a day.
const SECONDS_PER_DAY: f64 = 86_400.0;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Evaporation<R> {
    l_per_day_and_kpa: R,
    vapour_of_room_kpa: R,
    vapour: Factor,
}

impl<R: Real> Evaporation<R> {
    /// Water evaporating, L/day.
    #[inline(always)]
    pub(super) fn l_per_day(&self, water: &Water<R>) -> R {
        self.l_per_day_and_kpa * (water.factor(self.vapour) - self.vapour_of_room_kpa).floor_zero()
    }

    /// How evaporation goes on with temperature: what is added per degree and per degree squared, L/day.
    #[inline(always)]
    pub(super) fn ahead_l_per_day(&self, water: &Water<R>) -> [R; 2] {
        let vapour = water.factor(self.vapour);
        let evaporates = self.vapour_of_room_kpa.below(vapour);
        let scale = R::pick(evaporates, self.l_per_day_and_kpa * vapour, R::zero());
        air::vapour_pressure_ahead(water.temperature()).map(|share| scale * share)
    }
}

impl<R: Real> Process<R> for Evaporation<R> {
    const ID: &'static str = "evaporation";
    const WHAT: &'static str = "water leaves the surface";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "E_act",
            "evaporation as a share of a pool in use",
            "1",
            0.6,
            (0.3, 0.75),
            published(&[SMITH_1998], "0.74 of undisturbed pools"),
        ),
        parameter(
            "E_coef",
            "heat carried off by evaporation",
            "kW/m²/kPa",
            0.089,
            (0.08, 0.1),
            memory(&[SMITH_1998], "SI form of the pool formula"),
        ),
        parameter(
            "L_v",
            "heat of evaporation",
            "kJ/kg",
            2440.0,
            (2400.0, 2460.0),
            memory(&[], "water at 25 °C"),
        ),
        parameter(
            "lid",
            "what a lid leaves of evaporation",
            "1",
            1.0,
            (0.1, 1.0),
            practice("1 is open"),
        ),
        parameter(
            "lid_closed",
            "what a closed lid leaves of evaporation",
            "1",
            0.2,
            (0.1, 0.3),
            practice(""),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let row = Row::new("").put(Pool::Volume, -R::one()).close(
            builder.contents,
            Quantity::Water,
            Component::Outside(Flux::Evaporation, Quantity::Water),
        );
        let surroundings = &builder.setup.surroundings;
        let area_and_time = R::of(SECONDS_PER_DAY) * builder.setup.tank.surface_m2;
        let process = Evaporation {
            l_per_day_and_kpa: builder.get("E_act") * builder.get("lid") * builder.get("E_coef")
                / builder.get("L_v")
                * area_and_time,
            vapour_of_room_kpa: surroundings.humidity_frac
                * air::vapour_pressure_atm(surroundings.room_c)
                * R::of(KPA_PER_ATM),
            vapour: builder.factors.free("vapour pressure", |t| {
                R::of(air::vapour_pressure_atm(t) * KPA_PER_ATM)
            }),
        };
        (process, vec![row])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = self.l_per_day(water);
    }
}
