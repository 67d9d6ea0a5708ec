//! Storey 0: numbers, maths, units and sources. Nothing here knows what a tank is.

pub mod abreast;
pub mod clock;
pub mod elementary;
pub mod lanes;
pub mod maths;
pub mod real;
pub mod sources;
pub mod units;
