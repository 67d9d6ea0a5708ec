//! Gas exchange: oxygen and carbon dioxide cross the surface and the bubbles of the air stone.
//!
//! Night air adds to the surface; it does not replace it, and it breaks a surface film.
//!
//! ```text
//! k_x = k_600·film·(600/Sc_x)^n_Sc·1000·A        L/day; film = 1 with air; without flow k_600·film ≤ k_600_still
//! air: O2 q = 24·a_air·Q        CO2 Hg·(1 − exp(−r_air·q/Hg)), Hg = 1440·Q/(K_H·R·T)        L/day, added
//! O2: k·(O2_sat − O2)        DIC: k·(CO2_sat − CO2)        both ways
//! ```

use crate::base::real::Real;
use crate::base::sources::{
    COLE_CARACO_1998, HOLMEN_LISS_1984, calibrated, derived, memory, published,
};
use crate::base::units::{CO2_G_PER_MOL, GAS_L_ATM_PER_MOL_K, KELVIN_AT_0_C};
use crate::chemistry::{constants, schmidt};
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
pub struct GasExchange<R> {
    /// k_600·film·1000·A without air, L/day.
    filmed_l_per_day: R,
    /// The same with the film broken by air.
    broken_l_per_day: R,
    /// Upper bound of both without flow.
    still_l_per_day: R,
    air_l_per_day: R,
    air_for_co2: R,
    oxygen_schmidt: Factor,
    co2_schmidt: Factor,
    oxygen_saturation: Factor,
    co2_saturation: Factor,
    water_per_gas: Factor,
}

/// Transfer of the two gases, L/day.
#[derive(Debug, Clone, Copy)]
pub struct Transfer<R> {
    /// Of oxygen.
    pub oxygen_l_per_day: R,
    /// Of carbon dioxide.
    pub co2_l_per_day: R,
}

impl<R: Real> GasExchange<R> {
    /// Transfer of both gases under what is switched, L/day.
    #[inline(always)]
    pub fn transfer(&self, water: &Water<R>) -> Transfer<R> {
        let held = &water.held;
        let surface = if held.airing {
            self.broken_l_per_day
        } else {
            self.filmed_l_per_day
        };
        let surface = if held.power {
            surface
        } else {
            surface.least(self.still_l_per_day)
        };
        let oxygen = surface * water.factor(self.oxygen_schmidt);
        let co2 = surface * water.factor(self.co2_schmidt);
        if !held.airing {
            return Transfer {
                oxygen_l_per_day: oxygen,
                co2_l_per_day: co2,
            };
        }
        let bubbles = self.air_l_per_day * held.air_l_per_min;
        let room = R::of(MINUTES_PER_DAY) * held.air_l_per_min * water.factor(self.water_per_gas);
        let filled = (-self.air_for_co2 * bubbles / room).exp();
        Transfer {
            oxygen_l_per_day: oxygen + bubbles,
            co2_l_per_day: co2 + room * (R::one() - filled),
        }
    }
    /// Oxygen in equilibrium with the air, mg/L.
    #[inline(always)]
    pub fn oxygen_saturation(&self, water: &Water<R>) -> R {
        water.factor(self.oxygen_saturation)
    }
}

/// Minutes in a day.
const MINUTES_PER_DAY: f64 = 1440.0;
/// Schmidt number at which transfer velocities are quoted (CO2 at 20 °C).
const SCHMIDT_600: f64 = 600.0;

impl<R: Real> Process<R> for GasExchange<R> {
    const ID: &'static str = "gas_exchange";
    const WHAT: &'static str = "oxygen and carbon dioxide cross the surface and the air bubbles";
    const PARAMETERS: &'static [ParameterSpec] = &[
        parameter(
            "k_600",
            "gas transfer velocity of the surface at Schmidt number 600",
            "m/day",
            0.75,
            (0.2, 6.0),
            calibrated(
                &[COLE_CARACO_1998],
                "set by the word for the surface; 0.50 for a lake without wind",
            ),
        ),
        parameter(
            "k_600_still",
            "gas transfer velocity of a still surface",
            "m/day",
            0.3,
            (0.2, 0.4),
            memory(&[], "below the lake value"),
        ),
        parameter(
            "k_600_gentle",
            "gas transfer velocity of a gentle ripple",
            "m/day",
            0.5,
            (0.35, 0.75),
            published(&[COLE_CARACO_1998], "a lake without wind 0.50"),
        ),
        parameter(
            "k_600_ripple",
            "gas transfer velocity of a ripple",
            "m/day",
            0.75,
            (0.4, 1.2),
            calibrated(&[], ""),
        ),
        parameter(
            "k_600_strong",
            "gas transfer velocity of a strong ripple",
            "m/day",
            2.0,
            (1.5, 3.0),
            memory(&[], ""),
        ),
        parameter(
            "k_600_splash",
            "gas transfer velocity of an overflow or splash",
            "m/day",
            4.0,
            (3.0, 6.0),
            memory(&[], ""),
        ),
        parameter(
            "film",
            "what a surface film leaves of gas transfer",
            "1",
            1.0,
            (0.5, 1.0),
            published(&[], "direction by abstract; size calibrated"),
        ),
        parameter(
            "film_seen",
            "what a film that can be seen leaves of gas transfer",
            "1",
            0.7,
            (0.5, 0.9),
            calibrated(&[], "middle of the range of film"),
        ),
        parameter(
            "n_Sc",
            "exponent of the Schmidt number",
            "1",
            0.5,
            (0.5, 0.667),
            published(&[HOLMEN_LISS_1984], "0.57"),
        ),
        parameter(
            "co2_room",
            "carbon dioxide of the room",
            "ppm",
            600.0,
            (420.0, 1500.0),
            memory(&[], ""),
        ),
        parameter(
            "a_air",
            "oxygen transfer of an air stone per air flow",
            "L/h per L/min",
            30.0,
            (10.0, 60.0),
            derived(
                "2 to 4 % of the oxygen per metre, and one measurement; rises less than in proportion",
            ),
        ),
        parameter(
            "r_air",
            "carbon dioxide transfer of bubbles relative to oxygen",
            "1",
            0.9,
            (0.85, 0.95),
            derived("ratio of diffusivities"),
        ),
    ];

    fn new(builder: &mut Builder<'_, R>) -> (Self, Vec<Row<R>>) {
        let tank = *builder.setup.tank;
        let surface = R::of(1000.0) * tank.surface_m2;
        let (exponent, room) = (builder.get("n_Sc"), builder.get("co2_room"));
        let schmidt = move |number: f64| (exponent * R::of(SCHMIDT_600 / number).ln()).exp();
        let per_ppm = move |t| tank.co2_saturation_mg_per_l_and_ppm(t) / R::of(CO2_G_PER_MOL);
        let per_gas = |t: f64| {
            constants::co2_solubility_mol_per_kg_atm(t) * GAS_L_ATM_PER_MOL_K * (t + KELVIN_AT_0_C)
        };
        let process = GasExchange {
            filmed_l_per_day: builder.get("k_600") * builder.get("film") * surface,
            broken_l_per_day: builder.get("k_600") * surface,
            still_l_per_day: builder.get("k_600_still") * surface,
            air_l_per_day: R::of(24.0) * builder.get("a_air"),
            air_for_co2: builder.get("r_air"),
            oxygen_schmidt: builder
                .factors
                .free("Schmidt factor of O2", move |t| schmidt(schmidt::oxygen(t))),
            co2_schmidt: builder.factors.free("Schmidt factor of CO2", move |t| {
                schmidt(schmidt::carbon_dioxide(t))
            }),
            oxygen_saturation: builder
                .factors
                .free("O2 saturation", move |t| tank.oxygen_saturation_mg_per_l(t)),
            co2_saturation: builder
                .factors
                .free("CO2 saturation", move |t| room * per_ppm(t)),
            water_per_gas: builder
                .factors
                .free("gas per water of CO2", move |t| R::of(1.0 / per_gas(t))),
        };
        let gas = |part: &str, pool: Pool, quantity: Quantity| {
            Row::new(part).put(pool, R::one()).close(
                builder.contents,
                quantity,
                Component::Outside(Flux::GasExchange, quantity),
            )
        };
        let oxygen = gas("oxygen in", Pool::Oxygen, Quantity::OxygenDemand);
        let co2 = gas("carbon dioxide in", Pool::Dic, Quantity::Carbon).of_stand(1);
        let rows = vec![
            oxygen.clone(),
            oxygen.reversed("oxygen out"),
            co2.clone(),
            co2.reversed("carbon dioxide out"),
        ];
        (process, rows)
    }

    #[inline(always)]
    fn rates(&self, water: &Water<R>, rates: &mut [R]) {
        let transfer = self.transfer(water);
        let oxygen = transfer.oxygen_l_per_day * (self.oxygen_saturation(water) - water.oxygen);
        let co2 = transfer.co2_l_per_day * (water.factor(self.co2_saturation) - water.co2);
        rates[0] = oxygen.floor_zero();
        rates[1] = (-oxygen).floor_zero();
        rates[2] = co2.floor_zero();
        rates[3] = (-co2).floor_zero();
    }
}
