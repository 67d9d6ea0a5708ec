//! The few transcendental functions the project uses, the same bits on every machine.
//!
//! The standard library calls the C library of the machine, whose last digit differs from one to
//! the next; these are written in Rust (crate `libm`). `sqrt` and plain arithmetic are exact
//! everywhere. No other file may call the standard ones (the lints refuse it). What a step needs of
//! them, for one tank or for lanes, is in `elementary`; these serve the building of a model.

/// e to the power x.
#[inline]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm.
#[inline]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// 10 to the power x.
#[inline]
pub fn exp10(x: f64) -> f64 {
    libm::exp10(x)
}

/// Decimal logarithm.
#[inline]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// x to the power y; slow, for set-up only.
#[inline]
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}
