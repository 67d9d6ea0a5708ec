//! Animals go in on the written day, ripe or not; here is which.

use crate::base::clock::DAY;
use crate::engine::event::EventKind;
use crate::engine::result::{Reading, RunResult};

use super::case::Case;
use super::ready::Verdict;

/// One stocking of the plan, held against the ready day.
#[derive(Debug, Clone, PartialEq)]
pub struct Arrival {
    /// Dotted path of the entry.
    pub name: String,
    /// The written day.
    pub day: u32,
    /// Live mass, g.
    pub mass_g: f64,
    /// Whether the tank is ready on that day.
    pub ripe: bool,
    /// Ripening limits left between the arrival and the end, in words.
    pub leaves: Vec<&'static str>,
}

/// Every stocking of the run in the order of time.
pub fn arrivals(run: &RunResult, case: &Case, verdict: &Verdict) -> Vec<Arrival> {
    let end = run.input.end_minute();
    let mut all: Vec<Arrival> = run
        .input
        .events
        .iter()
        .filter(|event| event.minute < end)
        .filter_map(|event| match &event.kind {
            EventKind::Stock(animals) => Some(Arrival {
                name: event.name.clone(),
                day: event.minute / DAY,
                mass_g: animals.mass_g,
                ripe: verdict
                    .day()
                    .is_some_and(|ready| ready <= event.minute / DAY),
                leaves: leaves(run, case, event.minute),
            }),
            _ => None,
        })
        .collect();
    all.sort_by_key(|arrival| arrival.day);
    all
}

fn leaves(run: &RunResult, case: &Case, from: u32) -> Vec<&'static str> {
    let shown = run.shown();
    let with_animals = &shown[shown.partition_point(|r| r.minute < from)..];
    let limits = &case.limits;
    let ever = |breaks: &dyn Fn(&Reading) -> bool| with_animals.iter().any(breaks);
    let mut words = Vec::new();
    if ever(&|r| r.tan_mg_n_per_l > limits.total_ammonia.value) {
        words.push("total ammonia");
    }
    if ever(&|r| r.nitrite_mg_n_per_l > limits.nitrite_with(r.chloride_mg_per_l)) {
        words.push("nitrite");
    }
    if ever(&|r| r.free_ammonia_mg_n_per_l > limits.free_ammonia.value) {
        words.push("free ammonia");
    }
    words
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::example::Example;
    use crate::analysis::ready::judge;

    fn arrival_on(day: u32) -> Arrival {
        let example = Example {
            stocked: Some((day, 0.1)),
            ..Example::default()
        };
        let (run, case) = (example.run(), example.case());
        arrivals(&run, &case, &judge(&run, &case)).remove(0)
    }

    #[test]
    fn animals_of_the_ready_day_find_a_ripe_tank_and_earlier_ones_do_not() {
        assert!(arrival_on(6).ripe && arrival_on(6).leaves.is_empty());
        let early = arrival_on(4);
        assert!(!early.ripe);
        assert_eq!(early.leaves, ["total ammonia", "nitrite"]);
    }
}
