//! A tank that differs from another in what is uncertain of it.

use firstfill::engine::input::ModelInput;

/// A tank that differs from the first in what is uncertain of it.
pub fn member(base: &ModelInput, number: usize) -> ModelInput {
    let mut input = base.clone();
    // whole turns of the golden ratio: spread over 0 to 1 without a pattern
    let turn = |by: f64| (number as f64 * by).fract();
    input.parameters = (base.parameters.clone())
        .with("q0", 60.0 + 120.0 * turn(0.618_033_988_7))
        .with("mu_NOB", 0.6 + 0.4 * turn(0.754_877_666_2))
        .with("k_600", 0.4 + 0.4 * turn(0.569_840_290_9));
    input.seed_level = 0.3 + 3.0 * turn(0.732_050_807_6);
    input
}
