//! Plants: more, fewer, later.

use crate::base::clock::DAY;
use crate::engine::event::EventKind;
use crate::engine::input::ModelInput;

use super::lever::Lever;

/// By how many days they are planted later.
const LATER_DAYS: u32 = 7;

/// The levers on the plants of a tank that has some.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    let Some(last) = input.stands.iter().map(|stand| stand.planted_at).max() else {
        return Vec::new();
    };
    let mut levers = vec![
        times("plants_more", "twice the plants at planting", 2.0),
        times("plants_fewer", "half the plants at planting", 0.5),
    ];
    if last + LATER_DAYS * DAY < input.end_minute() {
        levers.push(later());
    }
    levers
}

fn times(key: &'static str, words: &str, factor: f64) -> Lever {
    Lever::of(key, words, move |input| {
        for stand in &mut input.stands {
            stand.density_g_per_m2 *= factor;
        }
    })
}

fn later() -> Lever {
    let words = format!("planted {LATER_DAYS} days later");
    Lever::of("planted_later", words, |input| {
        let by = LATER_DAYS * DAY;
        input
            .stands
            .iter_mut()
            .for_each(|stand| stand.planted_at += by);
        let planting = |kind: &EventKind| matches!(kind, EventKind::Plant { .. });
        for event in input
            .events
            .iter_mut()
            .filter(|event| planting(&event.kind))
        {
            event.minute += by;
        }
    })
}
