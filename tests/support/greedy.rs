//! Processes that would empty their pools many times within a step, far beyond any range.

use firstfill::engine::input::ModelInput;

/// Lets a tank's processes take more than there is, whatever they live on.
pub fn let_loose(input: &mut ModelInput) {
    // each alone would empty its pool several times in five minutes
    for (id, value) in [
        ("k_Fe", 2000.0),
        ("k_Dfast", 1000.0),
        ("V_NH_stems", 3000.0),
        ("V_NO_stems", 3000.0),
        ("mu_G", 5000.0),
        ("k_kill", 1e6),
    ] {
        input.parameters = input.parameters.clone().with(id, value);
    }
}
