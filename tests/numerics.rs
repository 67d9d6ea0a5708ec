//! How exact a step is. `cargo run --release --example step_error` prints the whole table.

mod support;

use firstfill::engine::input::{GasPlan, ModelInput};
use firstfill::engine::plan::Plan;
use firstfill::engine::simulation::Simulation;
use support::drive::{Nobody, go_on};
use support::reference;
use support::step_error::{CHARTED, Shares, Track, of_default_step, shipped, worst};

/// Half a percent of the range is the width of a line in a chart; a quarter of that is asked of runs.
const HALF_A_PERCENT: f64 = 0.005;

#[test]
fn the_default_step_is_exact_to_a_quarter_of_a_line_on_every_shipped_scenario() {
    for (name, case) in shipped() {
        let (quantity, share) = worst(&of_default_step(&case.input));
        println!("{name}: {quantity} {share:.1e}");
        assert!(
            share < 0.25 * HALF_A_PERCENT,
            "{name}: {quantity} is off by {share:.1e} of its range"
        );
    }
}

/// A tank whose steps are shortened: splash, and 6 L/min of air by night.
fn splashing() -> ModelInput {
    let mut input = reference::input("base_night_air");
    input.parameters = input.parameters.with("k_600", 4.0);
    input.air[0].value = 6.0;
    input
}

/// Another: 400 mg/h of gas dissolved under a controller that closes at 30 mg/L.
fn controlled() -> ModelInput {
    let mut input = reference::input("base");
    let share = input.parameters.get("eta_CO2");
    if let GasPlan::Rate {
        lines,
        cut_off_mg_per_l,
    } = &mut input.gas
    {
        lines[0].value = 400.0 / share;
        *cut_off_mg_per_l = Some(30.0);
    }
    input
}

#[test]
fn shortened_steps_are_as_exact() {
    for (name, input) in [
        ("splash, 6 L/min", splashing()),
        ("cut-off at 30", controlled()),
    ] {
        let plan = Plan::new(&input);
        let mut tank = Simulation::filled(&plan);
        go_on(&mut tank, 2, &mut Nobody).unwrap();
        let work = tank.work(0);
        assert!(work.parts > work.steps + 30, "{name}: steps are shortened");
        let (quantity, share) = worst(&of_default_step(&input));
        println!("{name}: {quantity} {share:.1e}");
        assert!(
            share < 0.25 * HALF_A_PERCENT,
            "{name}: {quantity} is off by {share:.1e} of its range"
        );
    }
}

/// The errors of a step, half and a quarter of it against one sixteen times finer.
fn errors(input: &ModelInput) -> [Shares; 3] {
    let finest = Track::of(input, 16);
    [1, 2, 4].map(|finer| Track::of(input, finer).apart(&finest))
}

#[test]
fn halving_the_step_divides_its_error_by_seven_or_more_in_a_bare_tank() {
    // 8 is the third order of the scheme; crowded films and the acid of the soil turn at kinks, which a step may
    // miss by part of its length
    let mut input = reference::input("bare_no_change");
    input.heating.set_c = None; // a thermostat cuts steps by how fast the temperature moves
    let [one, half, quarter] = errors(&input);
    for place in [0, 2, 4] {
        let quantity = CHARTED[place].0;
        let (first, second) = (one[place] / half[place], half[place] / quarter[place]);
        println!("{quantity}: {first:.2} and {second:.2}");
        assert!(
            first > 7.0 && second > 7.0,
            "{quantity}: {first} and {second}"
        );
    }
}
