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
    /// How fast the thermostat alone would end a difference inside its band, per day; nothing above it,
    /// where the heater is off.
    #[inline(always)]
    pub fn thermostat_per_day(&self, water: &Water<R>) -> R {
        if !water.held.power {
            return R::zero();
        }
        let off_from = self.set_c + R::of(0.5) * self.band_k;
        let per_day =
            R::of(KJ_PER_DAY_AND_W) * self.heater_w / (self.band_k * self.heat_capacity(water));
        R::pick(water.temperature().below(off_from), per_day, R::zero())
    }
    /// The temperature from which down the heater runs at full power, °C.
    #[inline(always)]
    pub fn full_power_below_c(&self) -> R {
        self.set_c - R::of(0.5) * self.band_k
    }
    /// How fast the water warms, K/day.
    #[inline(always)]
    pub fn k_per_day(&self, water: &Water<R>) -> R {
        let temperature = water.temperature();
        let above_room = temperature - self.room_c;
        let powered = if water.held.power {
            let call = ((self.set_c + R::of(0.5) * self.band_k - temperature) / self.band_k).unit();
            let lamp = if water.held.lit {
                self.lamp_w
            } else {
                R::zero()
            };
            self.heater_w * call + lamp + self.pump_w
        } else {
            R::zero()
        };
        let gained = R::of(KJ_PER_DAY_AND_W) * (powered - self.loss_w_per_k * above_room)
            - self.evaporation_heat * self.evaporation.l_per_day(water)
            - self.capacity * self.top_up.l_per_day(water) * above_room;
        gained / self.heat_capacity(water)
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
        rates[0] = self.k_per_day(water);
    }
}
