//! Light: longer, shorter, stronger, weaker.

use crate::base::clock::HOUR;
use crate::base::units::digits;
use crate::engine::input::ModelInput;

use super::lever::Lever;
use super::windows::{all_fit, beginning_alike, move_all};

/// By how much the light goes out later or earlier, h.
const STEP_H: i32 = 2;
/// How much stronger or weaker it is (a judgement, no source).
const STEP_FRAC: f64 = 0.3;

/// The levers on the light of a tank that has some.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    if input.light.is_empty() {
        return Vec::new();
    }
    let step = STEP_H * HOUR as i32;
    let longer = all_fit(&input.light, step).then(|| by("light_longer", "longer", step));
    let shorter = all_fit(&input.light, -step).then(|| by("light_shorter", "shorter", -step));
    let all = [
        longer,
        shorter,
        Some(times("light_stronger", "stronger", 1.0 + STEP_FRAC)),
        Some(times("light_weaker", "weaker", 1.0 - STEP_FRAC)),
    ];
    all.into_iter().flatten().collect()
}

fn by(key: &'static str, word: &str, step: i32) -> Lever {
    let words = format!("light {STEP_H} h {word}");
    Lever::of(key, words, move |input| {
        move_all(&mut input.light, step, beginning_alike)
    })
}

fn times(key: &'static str, word: &str, factor: f64) -> Lever {
    let words = format!("light {} % {word}", digits(100.0 * STEP_FRAC));
    Lever::of(key, words, move |input| {
        input.light.iter_mut().for_each(|line| line.value *= factor);
    })
}
