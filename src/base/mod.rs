//! Storey 0: numbers, maths, chance, units, sources, and a flag to stop by. Nothing here knows what a tank is.

pub mod abreast;
pub mod clock;
pub mod elementary;
pub mod lanes;
pub mod maths;
pub mod moments;
pub mod normal;
pub mod quantiles;
pub mod real;
pub mod rounding;
pub mod shown;
pub mod sobol;
pub mod sources;
pub mod stop;
pub mod streams;
pub mod units;
