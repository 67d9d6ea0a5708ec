//! Which setting cures a broken limit of oxygen or CO2, in the words of the scenario file.

use crate::base::clock::Window;
use crate::engine::input::{GasPlan, ModelInput};
use crate::engine::result::{Reading, RunResult};

use super::uncovered::dark_without_air;

/// What would have kept oxygen up at a minute.
pub fn oxygen(run: &RunResult, minute: u32) -> String {
    let cut = run
        .input
        .power_cuts
        .iter()
        .any(|cut| cut.from <= minute && minute < cut.until);
    let air_runs = reading_at(run, minute).is_some_and(|r| r.air_l_per_min > 0.0);
    if cut {
        "a battery air pump for the power cut".into()
    } else if air_runs {
        "a larger air.flow, or surface.kind one word stronger".into()
    } else if !run.input.air.is_empty() {
        air_longer(&run.input)
    } else {
        "air.on = \"20:00..08:00\" with air.flow = \"1 L/min\", or surface.kind one word stronger"
            .into()
    }
}

/// Air in the hours that the plan leaves out; a stronger surface where it leaves none out of the dark.
fn air_longer(input: &ModelInput) -> String {
    let hours: Vec<String> = dark_without_air(input)
        .iter()
        .map(Window::to_string)
        .collect();
    match hours.is_empty() {
        true => "surface.kind one word stronger: air runs all night".into(),
        false => format!(
            "air (air.on) at {} too, dark hours without it",
            hours.join(" and ")
        ),
    }
}

/// What would keep CO2 at its limit, given the highest.
pub fn co2(input: &ModelInput, worst: f64, limit: f64) -> String {
    match &input.gas {
        GasPlan::None => "surface.kind one word stronger: no gas is given".into(),
        // what stands above the air's share rises nearly in step with the rate
        GasPlan::Rate { .. } => format!(
            "gas.rate about {:.0} % lower",
            (100.0 * (1.0 - limit / worst)).ceil()
        ),
        GasPlan::Hold {
            target_mg_per_l, ..
        } => format!(
            "gas.hold = \"{:.0} mg/L\"",
            (target_mg_per_l * limit / worst).floor()
        ),
    }
}

fn reading_at(run: &RunResult, minute: u32) -> Option<&Reading> {
    run.readings
        .get(run.readings.partition_point(|r| r.minute < minute))
}
