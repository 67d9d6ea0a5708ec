//! What stands beside the levers, in words and numbers that the terminal and the chart share.

use crate::analysis::case::Case;
use crate::analysis::levers::price::Price;
use crate::analysis::levers::shortest_air::{
    KEPT_OF_100, Night, ShortestAir, USUAL_FLOW_L_PER_MIN, dark_window,
};
use crate::base::clock::{DAY, HOUR, TimeOfDay, Window};
use crate::base::units::digits;

use super::text::words::short;
use super::when::day_in_words;

/// What stands where a lever takes what the plan takes.
pub const AS_PLANNED: &str = "·";

/// Litres, grams of gas, lowest oxygen and how many of 100 are ready; a dot where the plan says the same.
pub fn price(price: &Price, plan: Option<&Price>) -> [String; 4] {
    let words = |price: &Price| {
        [
            format!("{:.0}", price.litres),
            format!("{:.0}", price.gas_g),
            format!("{:.1}", price.worst_night_mg_per_l),
            format!("{:.0}", price.ready_of_100),
        ]
    };
    let mut own = words(price);
    for (own, planned) in own.iter_mut().zip(plan.map(words).into_iter().flatten()) {
        if *own == planned {
            *own = AS_PLANNED.into();
        }
    }
    own
}

/// Until when mature medium gains days.
pub fn seeding(case: &Case, last_day: Option<u32>) -> String {
    match last_day {
        Some(day) if day >= case.input.last_day => "mature medium gains days however late".into(),
        Some(day) => format!(
            "mature medium gains less than half a day after {}",
            day_in_words(case.filled_on, day)
        ),
        None => "mature medium gains less than half a day, on whatever day it comes".into(),
    }
}

/// The shortest air a night that keeps oxygen over its limit, and what it takes.
pub fn night_air(air: &ShortestAir, case: &Case) -> String {
    let kept =
        format!("oxygen over its limit at every hour in {KEPT_OF_100:.0} of 100 plausible tanks");
    let gas = match air.gas_planned_g > 0.0 {
        true => format!(
            "; gas {} g, as planned {} g",
            short(air.gas_g),
            short(air.gas_planned_g)
        ),
        false => String::new(),
    };
    match air.minutes {
        Some(0) => format!("none is needed to keep {kept}{gas}"),
        Some(minutes) => format!(
            "{} h are the shortest that keep {kept}: {}{gas}",
            hours(minutes),
            setting(air.night, minutes, case)
        ),
        None => format!(
            "even {} h, all the dark to lights-on, keep oxygen over its limit in no more than {:.0} of 100 plausible tanks: \
             more flow (air.flow), fewer plants, or a rougher surface",
            hours(air.longest_minutes),
            air.kept_of_100.floor()
        ),
    }
}

fn hours(minutes: u32) -> String {
    digits(f64::from(minutes) / f64::from(HOUR))
}

/// As it could be written in the scenario.
fn setting(night: Night, minutes: u32, case: &Case) -> String {
    match (night, dark_window(&case.input)) {
        (Night::UpToDawn, Some(dark)) => {
            let on = TimeOfDay((dark.off.0 + DAY - minutes) % DAY);
            let window = Window { on, ..dark };
            match case.input.air.is_empty() {
                true => {
                    format!("air.on = \"{window}\", air.flow = \"{USUAL_FLOW_L_PER_MIN} L/min\"")
                }
                false => format!("air.on = \"{window}\""),
            }
        }
        _ => format!("air.on.for = \"{} h\"", hours(minutes)),
    }
}
