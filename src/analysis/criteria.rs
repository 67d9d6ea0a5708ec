//! The US criteria for total ammonia in fresh water, which allow less the higher the pH and the
//! warmer the water.
//!
//! Source: EPA 2013, Aquatic life ambient water quality criteria for ammonia, EPA-822-R-13-001.
//! All 54 printed values are reproduced at two significant figures (see `tests/limits.rs`).

use crate::base::maths::exp10;

/// Below this temperature the chronic criterion does not rise further, °C.
const CHRONIC_FLOOR_C: f64 = 7.0;

/// The chronic criterion: total ammonia that may stand for a month, mg N/L.
///
/// ```text
/// 0.8876 · (0.0278/(1+10^(7.688−pH)) + 1.1994/(1+10^(pH−7.688))) · 2.126 · 10^(0.028·(20−max(T,7)))
/// ```
pub fn chronic_mg_n_per_l(ph: f64, temperature_c: f64) -> f64 {
    let shape = two_sided(ph, 7.688, 0.0278, 1.1994);
    0.8876 * shape * 2.126 * exp10(0.028 * (20.0 - temperature_c.max(CHRONIC_FLOOR_C)))
}

/// The acute criterion: total ammonia that may stand for an hour, mg N/L.
///
/// ```text
/// 0.7249 · (0.0114/(1+10^(7.204−pH)) + 1.6181/(1+10^(pH−7.204))) · min(51.93, 23.12·10^(0.036·(20−T)))
/// ```
/// Where trout and salmon live, it is at most what protects them:
/// ```text
/// 0.275/(1+10^(7.204−pH)) + 39.0/(1+10^(pH−7.204))
/// ```
pub fn acute_mg_n_per_l(ph: f64, temperature_c: f64, salmonids: bool) -> f64 {
    let warm = (23.12 * exp10(0.036 * (20.0 - temperature_c))).min(51.93);
    let others = 0.7249 * two_sided(ph, 7.204, 0.0114, 1.6181) * warm;
    if salmonids {
        others.min(two_sided(ph, 7.204, 0.275, 39.0))
    } else {
        others
    }
}

fn two_sided(ph: f64, middle: f64, when_high: f64, when_low: f64) -> f64 {
    when_high / (1.0 + exp10(middle - ph)) + when_low / (1.0 + exp10(ph - middle))
}
