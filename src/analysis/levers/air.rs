//! Night air: longer, shorter, none; through the dark where none is planned.

use crate::base::clock::{DAY, HOUR, Window};
use crate::base::units::digits;
use crate::engine::input::{ModelInput, TimerLine};

use super::lever::Lever;
use super::windows::{all_fit, beginning_alike, ending_alike, move_all};

/// By how much the air runs longer or shorter, from the same beginning, h.
const STEP_H: i32 = 2;
/// The flow of a stone where none is planned, L/min (common practice, no source).
const USUAL_FLOW_L_PER_MIN: f64 = 0.5;

/// The levers on night air.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    if input.air.is_empty() {
        return through_the_dark(input).into_iter().collect();
    }
    let step = STEP_H * HOUR as i32;
    let longer = all_fit(&input.air, step).then(|| by("air_longer", "longer", step));
    let shorter = all_fit(&input.air, -step).then(|| by("air_shorter", "shorter", -step));
    let none = Lever::of("air_none", "no air stone", |input| input.air.clear());
    [longer, shorter, Some(none)]
        .into_iter()
        .flatten()
        .collect()
}

/// Air of that length: from where it begins in the plan (`air.on.for`), or up to lights-on where none is
/// planned.
pub fn for_minutes(minutes: u32) -> Lever {
    let words = format!("air for {} h", digits(f64::from(minutes) / f64::from(HOUR)));
    Lever::of("air_for", words, move |input| match input.air.is_empty() {
        true => {
            input.air = dark_hours(input);
            set_all(&mut input.air, minutes, ending_alike);
        }
        false => set_all(&mut input.air, minutes, beginning_alike),
    })
}

/// Minutes from where the air begins (at lights-off where none is planned) to lights-on; none without light.
pub fn up_to_dawn(input: &ModelInput) -> Option<u32> {
    let dawn = input.light.first()?.window.on;
    let begins = match input.air.first() {
        Some(line) => line.window.on,
        None => input.light[0].window.off,
    };
    Some((dawn.0 + DAY - begins.0) % DAY)
}

fn set_all(lines: &mut [TimerLine], minutes: u32, at: fn(Window, u32) -> Window) {
    for line in lines {
        line.window = at(line.window, minutes);
    }
}

fn by(key: &'static str, word: &str, step: i32) -> Lever {
    let words = format!("night air {STEP_H} h {word}");
    Lever::of(key, words, move |input| {
        move_all(&mut input.air, step, beginning_alike)
    })
}

fn through_the_dark(input: &ModelInput) -> Option<Lever> {
    let words = format!("air through the dark hours, {USUAL_FLOW_L_PER_MIN} L/min");
    let add = |input: &mut ModelInput| input.air = dark_hours(input);
    (!input.light.is_empty()).then(|| Lever::of("air_at_night", words, add))
}

/// From lights-off to lights-on, line by line.
fn dark_hours(input: &ModelInput) -> Vec<TimerLine> {
    let dark = |line: &TimerLine| TimerLine {
        from_day: line.from_day,
        window: Window {
            on: line.window.off,
            off: line.window.on,
        },
        value: USUAL_FLOW_L_PER_MIN,
    };
    input.light.iter().map(dark).collect()
}
