//! Colours of a grid: one hue a figure, pale to deep.

use crate::analysis::compare::lines::Line;
use crate::analysis::compare::value::Value;
use crate::output::chart::axis::{Axis, around, from_zero};
use crate::output::chart::style::{
    AMMONIA, CHANGE, CO2, Colour, LIGHT, MUTED, NITRATE, NITRITE, OXYGEN, PLANTS, READY, WHITE,
};

/// Cover of the lowest and of the highest value of a map: ink on the deepest can still be read.
const PALE: f64 = 0.08;
const DEEP: f64 = 0.62;
/// Cover of the first and of the last of many curves.
const FIRST_CURVE: f64 = 0.42;
const LAST_CURVE: f64 = 1.0;
/// Most steps of a scale.
const STEPS: usize = 5;
/// A scale begins at zero where the lowest value is under this share of the highest.
const FROM_ZERO: f64 = 0.25;

/// How the names of figures begin, and their colours.
const HUES: [(&str, Colour); 12] = [
    ("tan_", AMMONIA),
    ("free_ammonia", AMMONIA),
    ("nitrite", NITRITE),
    ("nitrate", NITRATE),
    ("oxygen", OXYGEN),
    ("co2", CO2),
    ("gas", CO2),
    ("ready", READY),
    ("water", CHANGE),
    ("heaviest", CHANGE),
    ("plants", PLANTS),
    ("temperature", LIGHT),
];

/// The colour of a figure.
pub fn hue(name: &str) -> Colour {
    let hue = HUES.iter().find(|(start, _)| name.starts_with(start));
    hue.map_or(MUTED, |(_, colour)| *colour)
}

/// A hue over white.
pub fn over_white(Colour(r, g, b): Colour, cover: f64) -> Colour {
    let part = |of: u8, white: u8| {
        (f64::from(white) + cover * (f64::from(of) - f64::from(white))).round() as u8
    };
    Colour(part(r, WHITE.0), part(g, WHITE.1), part(b, WHITE.2))
}

/// The colour of a place on a scale, 0 to 1.
pub fn at_place(hue: Colour, place: f64) -> Colour {
    over_white(hue, PALE + (DEEP - PALE) * place.clamp(0.0, 1.0))
}

/// The colour of one of many curves along a grid.
pub fn of_curve(hue: Colour, number: usize, count: usize) -> Colour {
    let place = number as f64 / (count - 1).max(1) as f64;
    over_white(hue, FIRST_CURVE + (LAST_CURVE - FIRST_CURVE) * place)
}

/// The scale of a figure over all points; a day later than the last is drawn as the next one.
pub fn scale(line: &Line, last_day: u32) -> Axis {
    let values: Vec<f64> = (line.values.iter())
        .filter_map(|value| height(value, last_day))
        .collect();
    let low = values.iter().copied().fold(f64::INFINITY, f64::min);
    let high = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    if values.is_empty() {
        return from_zero([], 1.0, STEPS);
    }
    match low < FROM_ZERO * high {
        true => from_zero(values, 1e-3, STEPS),
        false => around(low, high, STEPS),
    }
}

/// Where a value lies on a scale.
pub fn height(value: &Value, last_day: u32) -> Option<f64> {
    let later = f64::from(last_day + 1);
    let middle = value.middle()?;
    Some(if middle.is_finite() { middle } else { later })
}
