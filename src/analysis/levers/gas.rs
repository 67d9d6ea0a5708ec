//! Carbon dioxide: more, less, longer, shorter, none.

use crate::base::clock::HOUR;
use crate::base::units::digits;
use crate::engine::input::{GasHours, GasPlan, ModelInput, TimerLine};

use super::lever::Lever;
use super::windows::{all_fit, ending_alike, move_all};

/// By how much the gas begins earlier or later, h.
const STEP_H: i32 = 1;
/// How much more or less gas (a judgement, no source).
const STEP_FRAC: f64 = 0.25;

/// The levers on the gas of a tank that has some.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    if matches!(input.gas, GasPlan::None) {
        return Vec::new();
    }
    let step = STEP_H * HOUR as i32;
    let fits = |step: i32| hours(&mut input.gas.clone()).is_some_and(|lines| all_fit(lines, step));
    let earlier = fits(step).then(|| by("gas_longer", "earlier", step));
    let later = fits(-step).then(|| by("gas_shorter", "later", -step));
    let none = Lever::of("gas_none", "no gas", |input| input.gas = GasPlan::None);
    let all = [
        Some(times(&input.gas, "gas_more", "more", 1.0 + STEP_FRAC)),
        Some(times(&input.gas, "gas_less", "less", 1.0 - STEP_FRAC)),
        earlier,
        later,
        Some(none),
    ];
    all.into_iter().flatten().collect()
}

fn by(key: &'static str, word: &str, step: i32) -> Lever {
    let words = format!("gas on {STEP_H} h {word}");
    Lever::of(key, words, move |input| {
        if let Some(lines) = hours(&mut input.gas) {
            move_all(lines, step, ending_alike);
        }
    })
}

/// Another target of a tuned valve, or another rate.
fn times(plan: &GasPlan, key: &'static str, word: &str, factor: f64) -> Lever {
    let words = match plan {
        GasPlan::Hold {
            target_mg_per_l, ..
        } => {
            let target = digits((factor * target_mg_per_l).round());
            format!("{word} gas, {target} mg/L at its highest")
        }
        _ => format!("a quarter {word} gas"),
    };
    Lever::of(key, words, move |input| match &mut input.gas {
        GasPlan::None => {}
        GasPlan::Rate { lines, .. } => lines.iter_mut().for_each(|line| line.value *= factor),
        GasPlan::Hold {
            target_mg_per_l, ..
        } => *target_mg_per_l *= factor,
    })
}

/// The hours of the gas, unless they are found by tuning.
fn hours(plan: &mut GasPlan) -> Option<&mut [TimerLine]> {
    match plan {
        GasPlan::Rate { lines, .. } => Some(lines),
        GasPlan::Hold {
            hours: GasHours::Given(lines),
            ..
        } => Some(lines),
        _ => None,
    }
}
