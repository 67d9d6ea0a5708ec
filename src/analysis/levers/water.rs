//! The water itself: alkalinity of what is refilled, temperature of the tank.

use crate::base::units::{MEQ_PER_DKH, digits};
use crate::engine::input::ModelInput;

use super::lever::Lever;

/// By how much the alkalinity of the refill is moved, dKH.
const ALKALINITY_STEP_DKH: f64 = 1.0;
/// By how much the temperature is moved, °C.
const TEMPERATURE_STEP_C: f64 = 2.0;

/// The levers on alkalinity and temperature.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    let all = [
        Some(harder()),
        softer(input),
        warmer(input, "warmer", "warmer", TEMPERATURE_STEP_C),
        warmer(input, "cooler", "cooler", -TEMPERATURE_STEP_C),
    ];
    all.into_iter().flatten().collect()
}

/// Bicarbonate into every refill: as much inorganic carbon as alkalinity.
fn harder() -> Lever {
    let words = format!("refill KH {} dKH higher", digits(ALKALINITY_STEP_DKH));
    Lever::of("refill_harder", words, |input| {
        bicarbonate(input, ALKALINITY_STEP_DKH * MEQ_PER_DKH);
    })
}

/// Where the refill has so much to lose; a member whose water has less loses all of it.
fn softer(input: &ModelInput) -> Option<Lever> {
    let step = ALKALINITY_STEP_DKH * MEQ_PER_DKH;
    let words = format!("refill KH {} dKH lower", digits(ALKALINITY_STEP_DKH));
    let has_it = input.refill.alkalinity_meq_per_l >= step;
    has_it.then(|| {
        Lever::of("refill_softer", words, move |input| {
            bicarbonate(input, -step)
        })
    })
}

fn bicarbonate(input: &mut ModelInput, meq_per_l: f64) {
    let refill = &mut input.refill;
    let least = refill
        .alkalinity_meq_per_l
        .min(refill.inorganic_carbon_mmol_per_l);
    let added = meq_per_l.max(-least.max(0.0));
    refill.alkalinity_meq_per_l += added;
    refill.inorganic_carbon_mmol_per_l += added;
}

/// Heater and first filling; a tank without a heater stands at the temperature of its room.
fn warmer(input: &ModelInput, key: &'static str, word: &str, step_c: f64) -> Option<Lever> {
    input.heating.set_c?;
    let words = format!("{} °C {word}", digits(step_c.abs()));
    Some(Lever::of(key, words, move |input| {
        input.heating.set_c = input.heating.set_c.map(|set_c| set_c + step_c);
        input.heating.start_c += step_c;
    }))
}
