//! The axis of an input: its values, in decades where its spread runs over many, or its settings.

use crate::analysis::study::findings::regions::{DRAWN, spans_decades};
use crate::analysis::study::input::{Input, Spread};
use crate::output::chart::axis::{Axis, Scale, Tick, around, decades};
use crate::output::chart::words::number;
use crate::output::study::numbers::two_digits;

/// Most steps of an axis.
const STEPS: usize = 4;
/// Most decades of an axis.
const DECADES: i32 = 6;
/// Longest name of a setting below a small panel, signs.
const SETTING: usize = 12;

/// The axis.
pub fn across(input: &Input) -> Axis {
    if let Spread::Settings(settings) = &input.spread {
        return of_settings(settings);
    }
    let [low, high] = DRAWN.map(|place| input.shown(input.at(place)));
    let axis = match spans_decades(input) {
        true => within(decades([low, high], DECADES), low, high),
        false => within(around(low, high, STEPS), low, high),
    };
    match axis
        .ticks
        .iter()
        .filter(|tick| !tick.words.is_empty())
        .count()
    {
        0 | 1 => with_ends(axis),
        _ => axis,
    }
}

/// The same without what lies beyond two values.
fn within(axis: Axis, low: f64, high: f64) -> Axis {
    let ticks = axis.ticks.into_iter();
    Axis {
        low,
        high,
        scale: axis.scale,
        ticks: ticks
            .filter(|tick| low <= tick.value && tick.value <= high)
            .collect(),
    }
}

/// Its ends named, where there is no room for anything between.
fn with_ends(axis: Axis) -> Axis {
    let ticks = [axis.low, axis.high].map(|value| Tick {
        value,
        words: two_digits(value),
    });
    Axis {
        ticks: ticks.to_vec(),
        ..axis
    }
}

/// Whether settings are too long to be named on an axis, and stand there by their numbers.
pub fn are_numbered(settings: &[String]) -> bool {
    let is_long = |words: &String| words.chars().count() > SETTING;
    settings.iter().any(is_long)
}

fn of_settings(settings: &[String]) -> Axis {
    let is_short = !are_numbered(settings);
    let name = |(at, words): (usize, &String)| Tick {
        value: at as f64,
        words: if is_short {
            words.clone()
        } else {
            number(at as f64 + 1.0, 0)
        },
    };
    Axis {
        low: -0.5,
        high: settings.len() as f64 - 0.5,
        scale: Scale::Even,
        ticks: settings.iter().enumerate().map(name).collect(),
    }
}
