//! Storey 1: water at rest, in pure functions. Fresh water, 0 to 40 °C, zero salinity.

pub mod activity;
pub mod air;
pub mod ammonia;
pub mod carbonate;
pub mod constants;
pub mod indicator;
pub mod nitrous_acid;
pub mod schmidt;
pub mod solubility;
pub mod still_water;
