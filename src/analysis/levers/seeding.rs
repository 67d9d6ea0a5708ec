//! Mature filter medium brought in: more, none, earlier, later.

use crate::base::clock::{DAY, TimeOfDay};
use crate::base::units::digits;
use crate::engine::event::{Event, EventKind};
use crate::engine::input::ModelInput;

use super::lever::Lever;

/// A fist of sponge, where none is planned, L (a judgement, no source).
const SPONGE_L: f64 = 0.1;
/// How much of what is planned.
const TWICE: f64 = 2.0;
/// By how many days it comes later.
const LATER_DAYS: u32 = 7;
/// Time of day at which a sponge comes that is not planned (common practice, no source).
const USUAL_TIME: TimeOfDay = TimeOfDay::at(9, 30);
/// Films of one litre of medium, by guild.
const PER_LITRE: [&str; 3] = ["seed_XA", "seed_XN", "seed_XK"];

/// The levers on medium brought in.
pub fn levers(input: &ModelInput) -> Vec<Lever> {
    let Some(first) = first_day(input) else {
        return vec![
            on_day(input, 0, "sponge_day_0"),
            on_day(input, LATER_DAYS, "sponge_later"),
        ];
    };
    let mut levers = vec![more(), none()];
    if first > 0 {
        levers.push(on_day(input, 0, "sponge_day_0"));
    }
    if first + LATER_DAYS <= input.last_day {
        levers.push(on_day(input, first + LATER_DAYS, "sponge_later"));
    }
    levers
}

/// The planned medium on another day, the first of it on that one; a sponge where none is planned.
pub fn on_day(input: &ModelInput, day: u32, key: &'static str) -> Lever {
    match first_day(input) {
        Some(first) => Lever::of(
            key,
            format!("mature medium on day {day}, not {first}"),
            move |input| shift(input, first, day),
        ),
        None => Lever::of(
            key,
            format!("{} L of mature sponge on day {day}", digits(SPONGE_L)),
            move |input| bring_sponge(input, day),
        ),
    }
}

/// The plan without any medium.
pub fn none() -> Lever {
    Lever::of("sponge_none", "no mature medium", |input| {
        input.events.retain(|event| !is_seed(event));
    })
}

fn more() -> Lever {
    Lever::of("sponge_more", "twice the mature medium", |input| {
        for event in &mut input.events {
            if let EventKind::Seed { mg_cod } = &mut event.kind {
                *mg_cod = mg_cod.map(|mg| TWICE * mg);
            }
        }
    })
}

fn shift(input: &mut ModelInput, from: u32, to: u32) {
    let filled_at = input.filled_at;
    for event in input.events.iter_mut().filter(|event| is_seed(event)) {
        event.minute = (event.minute + to * DAY - from * DAY).max(filled_at);
    }
}

fn bring_sponge(input: &mut ModelInput, day: u32) {
    let mg_cod = PER_LITRE.map(|id| SPONGE_L * input.parameters.get(id));
    input.events.push(Event {
        minute: (day * DAY + USUAL_TIME.0).max(input.filled_at),
        name: "seed.sponge".into(),
        kind: EventKind::Seed { mg_cod },
    });
}

/// The day on which the first medium comes.
fn first_day(input: &ModelInput) -> Option<u32> {
    let seeds = input.events.iter().filter(|event| is_seed(event));
    seeds.map(|event| event.minute / DAY).min()
}

fn is_seed(event: &Event) -> bool {
    matches!(event.kind, EventKind::Seed { .. })
}
