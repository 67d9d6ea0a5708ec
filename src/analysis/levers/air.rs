//! Night air: longer, shorter, none; through the dark where none is planned.

use crate::base::clock::{DAY, HOUR, Window};
use crate::base::units::digits;
use crate::engine::input::{ModelInput, TimerLine};

use super::lever::Lever;
use super::windows::{all_fit, beginning_alike, ending_alike, move_all};

/// By how much the air runs longer or shorter, from the same beginning, h.
const STEP_H: i32 = 2;
/// The flow of a stone where none is planned, L/min (common practice, no source).
pub const USUAL_FLOW_L_PER_MIN: f64 = 0.5;

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

/// Where a night's air of some length lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Night {
    /// It begins as in the plan (`air.on.for`).
    FromPlan,
    /// It ends at lights-on, whenever it begins.
    UpToDawn,
}

impl Night {
    /// Air of that length. Where none is planned, of the usual flow.
    pub fn for_minutes(self, minutes: u32) -> Lever {
        let words = format!("air for {} h", digits(f64::from(minutes) / f64::from(HOUR)));
        Lever::of("air_for", words, move |input| match self {
            Night::FromPlan => set_all(&mut input.air, |window| beginning_alike(window, minutes)),
            Night::UpToDawn => {
                let Some(dark) = dark_window(input) else {
                    return;
                };
                if input.air.is_empty() {
                    input.air = dark_hours(input);
                }
                set_all(&mut input.air, |_| ending_alike(dark, minutes));
            }
        })
    }

    /// Minutes of the longest that is of use: to lights-on from where it begins in the plan, or from lights-off. None
    /// without light, and where a plan is asked for that has no air.
    pub fn longest_minutes(self, input: &ModelInput) -> Option<u32> {
        let dark = dark_window(input)?;
        let begins = match self {
            Night::FromPlan => input.air.first()?.window.on,
            Night::UpToDawn => dark.on,
        };
        Some((dark.off.0 + DAY - begins.0) % DAY)
    }
}

/// From lights-off to lights-on, as the lamp begins; none without light.
pub fn dark_window(input: &ModelInput) -> Option<Window> {
    let lit = input.light.first()?.window;
    Some(Window {
        on: lit.off,
        off: lit.on,
    })
}

fn set_all(lines: &mut [TimerLine], to: impl Fn(Window) -> Window) {
    for line in lines {
        line.window = to(line.window);
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
