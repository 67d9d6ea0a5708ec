//! `[power_cuts]`: hours without mains, with or without a battery air pump.

use crate::base::clock::DAY;
use crate::base::units::everyday;
use crate::engine::input::PowerCut;
use crate::scenario::draft::Draft;
use crate::scenario::problem::Problem;
use crate::scenario::reader::Reader;
use crate::scenario::repeats;
use crate::scenario::timer;
use crate::scenario::tree::{Table, Value};

/// Longest power cut, days.
const LONGEST_DAYS: f64 = 14.0;

/// Reads `[power_cuts]`; `air_flow` is that of `[air]`, L/min.
pub fn read(file: &Reader<'_>, draft: &Draft<'_>, air_flow: Option<f64>) -> Vec<PowerCut> {
    let mut cuts: Vec<PowerCut> = Vec::new();
    for entry in file.section("power_cuts").named("NAME") {
        let day = repeats::one_day(&entry, &draft.calendar, None);
        let hours = hours(&entry);
        let battery = battery(&entry, air_flow);
        entry.close();
        if let (Some(day), Some((from, minutes)), Some(battery_air_l_per_min)) =
            (day, hours, battery)
        {
            let from = day * DAY + from;
            cuts.push(PowerCut {
                from,
                until: from + minutes,
                battery_air_l_per_min,
            });
        }
    }
    cuts.sort_by_key(|cut| (cut.from, cut.until));
    cuts
}

/// Minute of the day at which the power fails, and for how many minutes.
fn hours(entry: &Reader<'_>) -> Option<(u32, u32)> {
    let Some(written) = entry.wanted("off") else {
        entry.missing("off");
        return None;
    };
    let path = entry.path_of("off");
    let hours = match &written.node.value {
        Value::Table(table) => from_for(entry, table),
        _ => timer::window(entry.desk, &path, &written.node)
            .map(|window| (window.on.0, window.minutes())),
    };
    if let Some((_, 0)) = hours {
        entry.desk.problem(
            Problem::at(&written.node.place, format!("{path} lasts no time at all"))
                .label("from and until are the same"),
        );
        return None;
    }
    if hours.is_some() {
        entry.given("off", &written.node);
    }
    hours
}

fn from_for(entry: &Reader<'_>, table: &Table) -> Option<(u32, u32)> {
    let written = entry.wanted("off")?;
    let path = entry.path_of("off");
    timer::start_and_length(entry.desk, &path, &written.node, table, LONGEST_DAYS)
}

/// Flow of the battery pump, L/min.
fn battery(entry: &Reader<'_>, air_flow: Option<f64>) -> Option<f64> {
    let Some(written) = entry.wanted("battery_air") else {
        return Some(0.0);
    };
    let Value::Truth(is_there) = written.node.value else {
        return entry
            .quantity("battery_air", &everyday::FLOW, (0.0, 100.0))
            .value();
    };
    entry.given("battery_air", &written.node);
    if is_there && air_flow.is_none() {
        let path = entry.path_of("battery_air");
        entry.desk.problem(
            Problem::at(
                &written.node.place,
                format!("{path} is true, but there is no air flow to go by"),
            )
            .label("true means the flow of [air]")
            .help("write the flow of the battery pump, for example battery_air = \"0.5 L/min\"")
            .help("or add a section [air] with a flow"),
        );
    }
    if is_there { air_flow } else { Some(0.0) }
}
