//! The figures people ask for first: peaks, the worst night, litres, visits, gas.

use crate::engine::result::Reading;

/// The highest or lowest value of something, with when.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extreme {
    /// The value.
    pub value: f64,
    /// Minutes since midnight of day 0.
    pub minute: u32,
}

/// The figures of one day.
#[derive(Debug, Clone, Copy)]
pub struct DayFigures {
    /// The day.
    pub day: u32,
    /// Lowest oxygen, mg/L.
    pub oxygen_low: Extreme,
    /// Highest oxygen, mg/L.
    pub oxygen_high: Extreme,
    /// Highest carbon dioxide, mg/L.
    pub co2_high: Extreme,
    /// Lowest carbon dioxide, mg/L.
    pub co2_low: Extreme,
    /// Lowest pH.
    pub ph_low: Extreme,
    /// Highest pH.
    pub ph_high: Extreme,
    /// Highest free ammonia, mg N/L.
    pub free_ammonia_high: Extreme,
}

/// The figures of a run.
#[derive(Debug, Clone)]
pub struct Milestones {
    /// Highest total ammonia, mg N/L.
    pub tan_peak: Extreme,
    /// Highest nitrite, mg N/L.
    pub nitrite_peak: Extreme,
    /// Highest free ammonia, mg N/L.
    pub free_ammonia_peak: Extreme,
    /// Lowest oxygen, mg/L.
    pub oxygen_low: Extreme,
    /// Highest carbon dioxide, mg/L.
    pub co2_high: Extreme,
    /// Lowest KH, dKH.
    pub kh_low: Extreme,
    /// Nitrate at the end, mg N/L.
    pub nitrate_end: f64,
    /// Each day.
    pub days: Vec<DayFigures>,
    /// Water taken out by changes, L.
    pub litres_changed: f64,
    /// Water of the first filling, L.
    pub litres_filled: f64,
    /// Days on which somebody has to be there.
    pub visits: u32,
    /// Gas that left the cylinder, g.
    pub gas_g: f64,
    /// The last reading of the run.
    pub end: Reading,
}
