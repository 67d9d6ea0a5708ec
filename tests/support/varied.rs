//! A tank that differs from another in what is uncertain of it.

use firstfill::engine::input::ModelInput;
use firstfill::model::parameter_set::Origin;

/// A tank that differs from the first in what is uncertain of it.
pub fn member(base: &ModelInput, number: usize) -> ModelInput {
    let mut input = base.clone();
    // whole turns of the golden ratio: spread over 0 to 1 without a pattern
    let turn = |by: f64| (number as f64 * by).fract();
    let values = [
        ("q0", 60.0 + 120.0 * turn(0.618_033_988_7)),
        ("mu_NOB", 0.6 + 0.4 * turn(0.754_877_666_2)),
        ("k_600", 0.4 + 0.4 * turn(0.569_840_290_9)),
    ];
    for (id, value) in values {
        input.parameters.set(id, value, Origin::Default);
    }
    input.seed_level = 0.3 + 3.0 * turn(0.732_050_807_6);
    input
}
