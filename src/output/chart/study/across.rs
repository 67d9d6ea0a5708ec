//! The axis of an input: its values, in decades where its spread runs over many, or its settings.

use crate::analysis::study::findings::regions::{DRAWN, spans_decades};
use crate::analysis::study::input::{Input, Spread};
use crate::base::maths::log10;
use crate::output::chart::axis::{Axis, Scale, Tick, around, decades};
use crate::output::chart::words::{number, short};

/// Most steps of an axis.
const STEPS: usize = 4;
/// Most decades of an axis.
const DECADES: i32 = 6;
/// Most digits after the point of two numbers that are told apart.
const MOST_DIGITS: f64 = 6.0;
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

/// A number with about two digits that count, however small it is: `0.043`, `4.3e-5`.
pub fn two_digits(value: f64) -> String {
    match short(value) {
        words if words == "0" && value != 0.0 => format!("{value:.1e}"),
        words => words,
    }
}

/// Two numbers with two digits that count, or with as many more as it takes to tell them apart: `1.12` and `1.08`.
pub fn told_apart(values: [f64; 2]) -> [String; 2] {
    let plain = values.map(two_digits);
    let differ = |[one, other]: &[String; 2]| one != other;
    if values[0] == values[1] || differ(&plain) {
        return plain;
    }
    let decade = log10(values[0].abs().max(values[1].abs())).floor();
    let two = (1.0 - decade).clamp(0.0, MOST_DIGITS) as usize;
    let longer = (two + 1..=two + 3).map(|digits| values.map(|value| number(value, digits)));
    let mut longer = longer;
    longer.find(differ).unwrap_or(plain)
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_that_look_alike_get_digits_until_they_do_not() {
        assert_eq!(told_apart([1.12, 1.08]), ["1.12", "1.08"]);
        assert_eq!(told_apart([0.92, 0.71]), ["0.92", "0.71"]);
        assert_eq!(told_apart([31.2, 30.9]), ["31.2", "30.9"]);
        assert_eq!(told_apart([0.0432, 0.0434]), ["0.0432", "0.0434"]);
        assert_eq!(told_apart([2.0, 2.0]), ["2.0", "2.0"]);
        assert_eq!(told_apart([4.31e-5, 8e-5]), ["4.3e-5", "8.0e-5"]);
    }
}
