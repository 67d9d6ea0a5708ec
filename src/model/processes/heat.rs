//! Heat: heater, lamp and pump warm the water; walls, evaporation and cool top-up take heat.
//!
//! ```text
//! (V + V_pw)·c_w·dT/dt = 86.4·(heater + lamp + pump − U·A_wall·(T − T_room)) − L_v·E + c_w·topup·(T_room − T)
//! heater = power·V_full·clamp((T_set + band/2 − T)/band, 0, 1)        W, kJ, L, day
//! ```
//! Without mains there is no heater, lamp or pump.

use crate::base::real::Real;
use crate::base::sources::{definition, memory};
use crate::model::parameter::{ParameterSpec, parameter};
use crate::model::pool::Pool;
use crate::model::process::{Builder, Process};
use crate::model::row::Row;
use crate::model::warming::Warming;
use crate::model::water::Water;

use super::evaporation::Evaporation;
use super::top_up::TopUp;

/// Kilojoules a day in a watt.
const KJ_PER_DAY_AND_W: f64 = 86.4;

/// See the head of this file.
#[derive(Debug, Clone)]
pub struct Heat<R> {
    evaporation: Evaporation<R>,
    top_up: TopUp<R>,
    heater_w: R,
    lamp_w: R,
    pump_w: R,
    set_c: R,
    band_k: R,
    loss_w_per_k: R,
    room_c: R,
    pore_water_l: R,
    capacity: R,
    evaporation_heat: R,
}

impl<R: Real> Heat<R> {
    /// How the water warms from now on, for as long as a part of a step.
    #[inline(always)]
    pub fn warming(&self, water: &Water<R>) -> Warming<R> {
        let from_c = water.temperature();
        let per_kj = R::one() / self.heat_capacity(water);
        let per_band = R::one() / self.band_k;
        let off_from_c = self.set_c + R::of(0.5) * self.band_k;
        let heater_w = self.switched(water, self.heater_w);
        Warming {
            from_c,
            calm: self.calm_kj_per_day(water).map(|kj| kj * per_kj),
            heater: R::of(KJ_PER_DAY_AND_W) * heater_w * per_kj,
            call: [(off_from_c - from_c) * per_band, -per_band],
        }
    }

    /// What warms the water but for the heater, kJ/day; what every degree adds to that, and every degree
    /// squared.
    #[inline(always)]
    fn calm_kj_per_day(&self, water: &Water<R>) -> [R; 3] {
        let above_room = water.temperature() - self.room_c;
        let lamp_w = match water.held.lit {
            true => self.lamp_w,
            false => R::zero(),
        };
        let powered_w = self.switched(water, lamp_w + self.pump_w);
        let leaves = self.evaporation.l_per_day(water);
        let [more, bend] = self.evaporation.ahead_l_per_day(water);
        // evaporation takes its heat, and what makes it good is warmed from the room's temperature
        let (warmed, whole) = match self.top_up.automatic {
            true => (self.capacity * above_room, self.capacity),
            false => (R::zero(), R::zero()),
        };
        let per_l = self.evaporation_heat + warmed;
        let walls = R::of(KJ_PER_DAY_AND_W) * self.loss_w_per_k;
        [
            R::of(KJ_PER_DAY_AND_W) * powered_w - walls * above_room - per_l * leaves,
            -(walls + per_l * more + whole * leaves),
            -(per_l * bend + whole * more),
        ]
    }

    /// What something takes from the mains, W.
    #[inline(always)]
    fn switched(&self, water: &Water<R>, watts: R) -> R {
        if water.held.power { watts } else { R::zero() }
    }

    /// Heat held by water and wet soil, kJ/K.
    #[inline(always)]
    fn heat_capacity(&self, water: &Water<R>) -> R {
        (water.volume() + self.pore_water_l) * self.capacity
    }
}

impl<R: Real> Process<R> for Heat<R> {
    const ID: &'static str = "heat";
    const WHAT: &'static str = "heater, lamp and pump warm; walls and evaporation cool";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "U",
            "heat loss of the glass",
            "W/m²/K",
            6.0,
            (4.0, 9.0),
            memory(&[], "glass and air films"),
        ),
        parameter(
            "band",
            "band of the thermostat",
            "K",
            1.0,
            (0.5, 1.0),
            memory(&[], ""),
        ),
        parameter(
            "heater",
            "power of the heater",
            "W/L",
            1.0,
            (0.5, 2.0),
            memory(&[], ""),
        ),
        parameter(
            "lamp",
            "lamp heat that reaches the water",
            "W/L",
            0.15,
            (0.05, 0.3),
            memory(&[], ""),
        ),
        parameter(
            "pump",
            "pump heat that reaches the water",
            "W/L",
            0.05,
            (0.02, 0.1),
            memory(&[], ""),
        ),
        parameter(
            "c_w",
            "heat capacity of water",
            "kJ/L/K",
            4.184,
            (4.17, 4.2),
            definition("the thermochemical calorie"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let full = builder.setup.tank.volume_l;
        let surroundings = builder.setup.surroundings;
        let process = Heat {
            evaporation: Evaporation::new(builder).0,
            top_up: TopUp::new(builder).0,
            heater_w: builder.get("heater") * full,
            lamp_w: builder.get("lamp") * full,
            pump_w: builder.get("pump") * full,
            set_c: surroundings.heater_set_c,
            band_k: builder.get("band"),
            loss_w_per_k: builder.get("U") * builder.setup.tank.wall_m2,
            room_c: surroundings.room_c,
            pore_water_l: builder.setup.pore_water_l(),
            capacity: builder.get("c_w"),
            evaporation_heat: builder.get("L_v"),
        };
        (process, vec![Row::new("").put(Pool::Temperature, R::one())])
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        rates[0] = match water.warms_by_course {
            true => R::zero(),
            false => self.warming(water).now(),
        };
    }
}
