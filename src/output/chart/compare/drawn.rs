//! The figures that are drawn as differences from the first plan.

use crate::analysis::ensemble::member::Told;
use crate::analysis::figure_list::Better;
use crate::output::chart::style::{AMMONIA, CHANGE, CO2, Colour, NITRATE, NITRITE, OXYGEN, READY};

/// A figure that is drawn.
pub struct Drawn {
    /// Its title.
    pub title: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// Which way it is better.
    pub better: Better,
    /// Its colour.
    pub colour: Colour,
    /// Reads it off a member of a run that ends on a day.
    pub read: fn(&Told, u32) -> Option<f64>,
}

/// Those drawn, row by row.
pub const DRAWN: [Drawn; 10] = [
    drawn("Ready day", "days", READY, |told, last_day| {
        Some(f64::from(told.ready.day.unwrap_or(last_day)))
    }),
    drawn("Peak ammonia", "mg N/L", AMMONIA, |told, _| {
        Some(told.figures.tan_peak.value)
    }),
    drawn("Peak free NH₃", "mg N/L", AMMONIA, |told, _| {
        Some(told.figures.free_ammonia_peak.value)
    }),
    drawn("Peak nitrite", "mg N/L", NITRITE, |told, _| {
        Some(told.figures.nitrite_peak.value)
    }),
    drawn("Nitrite over limit", "h", NITRITE, |told, _| {
        Some(told.figures.hours.nitrite)
    }),
    Drawn {
        better: Better::More,
        ..drawn("Worst night", "mg/L O₂", OXYGEN, |told, _| {
            Some(told.figures.oxygen_low.value)
        })
    },
    drawn("Highest CO₂", "mg/L", CO2, |told, _| {
        Some(told.figures.co2_high.value)
    }),
    Drawn {
        better: Better::More,
        ..drawn("Lowest KH", "dKH", NITRATE, |told, _| {
            Some(told.figures.kh_low.value)
        })
    },
    drawn("Water changed", "L", CHANGE, |told, _| {
        Some(told.figures.litres_changed)
    }),
    drawn("Gas", "g", CO2, |told, _| Some(told.figures.gas_g)),
];

const fn drawn(
    title: &'static str,
    unit: &'static str,
    colour: Colour,
    read: fn(&Told, u32) -> Option<f64>,
) -> Drawn {
    Drawn {
        title,
        unit,
        better: Better::Less,
        colour,
        read,
    }
}
