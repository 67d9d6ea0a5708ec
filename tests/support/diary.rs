//! Tanks of the stories, run once, and how to read them like a diary.

use std::collections::BTreeMap;
use std::sync::{LazyLock, Mutex};

use firstfill::base::clock::{DAY, HOUR, TimeOfDay, days};
use firstfill::base::units::MEQ_PER_DKH;
use firstfill::engine::event::{Animals, Event, EventKind};
use firstfill::engine::input::{GasHours, GasPlan, ModelInput, TimerLine};
use firstfill::engine::result::{Reading, RunResult};
use firstfill::engine::run::run;
use firstfill::engine::timers::line_on;

use super::reference;

/// Tanks beside the reference runs.
pub const OTHER_TANKS: [&str; 7] = [
    "soft_no_change",
    "soft_changes_from_28",
    "filmed_with_fish",
    "bright_and_long",
    "held_at_30",
    "seeded_ten_times",
    "dense_no_gas",
];

pub fn input(name: &str) -> ModelInput {
    match name {
        "soft_no_change" => soft(reference::input("no_change")),
        "soft_changes_from_28" => {
            let mut input = soft(reference::input("no_change"));
            input.events.extend((28..56).step_by(7).map(|day| Event {
                minute: day * DAY + 9 * HOUR + 30,
                name: "changes".into(),
                kind: EventKind::Change { share: 0.5 },
            }));
            input
        }
        "filmed_with_fish" => {
            let mut input = reference::input("dense_still");
            input.parameters = input.parameters.with("film", 0.5);
            let animals = Animals {
                mass_g: 12.0,
                feed_g_per_day: 0.24,
                protein_frac: 0.4,
                shrimp: false,
            };
            input.events.push(Event {
                minute: 35 * DAY,
                name: "fish".into(),
                kind: EventKind::Stock(animals),
            });
            input
        }
        "bright_and_long" => {
            let mut input = reference::input("base");
            input.light[0].value = 150.0;
            input.light[0].window.off = TimeOfDay::at(20, 0);
            input
        }
        "held_at_30" => {
            let mut input = reference::input("base");
            let hours = line_on(&gas_lines(&input), 0).unwrap().window;
            input.gas = GasPlan::Hold {
                target_mg_per_l: 30.0,
                tuned_on: (0..8).collect(),
                hours: GasHours::Given(vec![TimerLine {
                    from_day: 0,
                    window: hours,
                    value: 0.0,
                }]),
            };
            input.last_day = 7;
            input
        }
        "seeded_ten_times" => {
            let mut input = reference::input("base");
            input.seed_level = 10.0;
            input
        }
        "dense_no_gas" => {
            let mut input = reference::input("dense");
            input.gas = GasPlan::None;
            input
        }
        name => reference::input(name),
    }
}

pub fn gas_lines(input: &ModelInput) -> Vec<TimerLine> {
    match &input.gas {
        GasPlan::Rate { lines, .. } => lines.clone(),
        _ => panic!("the reference tanks give gas at a rate"),
    }
}

/// The same tank on tap water of 1 dKH.
pub fn soft(mut input: ModelInput) -> ModelInput {
    let water = reference::input("soft_bare").fill;
    (input.fill, input.refill) = (water, water);
    input
}

/// All tanks, run once for all stories.
pub static RUNS: LazyLock<BTreeMap<String, RunResult>> = LazyLock::new(|| {
    let mut names = reference::names();
    names.extend(OTHER_TANKS.map(String::from));
    let waiting = Mutex::new(names.into_iter());
    let finished = Mutex::new(BTreeMap::new());
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                loop {
                    let Some(name) = waiting.lock().unwrap().next() else {
                        break;
                    };
                    let result = run(&input(&name)).unwrap();
                    finished.lock().unwrap().insert(name, result);
                }
            });
        }
    });
    finished.into_inner().unwrap()
});

pub fn tank(name: &str) -> &'static RunResult {
    &RUNS[name]
}

pub type Value = fn(&Reading) -> f64;

pub const TAN: Value = |r| r.tan_mg_n_per_l;
pub const NITRITE: Value = |r| r.nitrite_mg_n_per_l;
pub const OXYGEN: Value = |r| r.oxygen_mg_per_l;
pub const CO2: Value = |r| r.co2_mg_per_l;
pub const PH: Value = |r| r.ph;

/// Readings between two days.
pub fn between(name: &str, from: f64, until: f64) -> impl Iterator<Item = &'static Reading> {
    tank(name)
        .readings
        .iter()
        .filter(move |r| (from..=until).contains(&days(r.minute)))
}

/// The last reading of a minute.
pub fn at(name: &str, day: u32, hour: f64) -> &'static Reading {
    let minute = day * DAY + (hour * 60.0).round() as u32;
    let readings = &tank(name).readings;
    readings.iter().rfind(|r| r.minute == minute).unwrap()
}

/// The highest value between two days, with its day.
pub fn peak(name: &str, value: Value, from: f64, until: f64) -> (f64, f64) {
    between(name, from, until).fold((f64::NEG_INFINITY, 0.0), |top, r| {
        if value(r) > top.0 {
            (value(r), days(r.minute))
        } else {
            top
        }
    })
}

pub fn highest(name: &str, value: Value, from: f64, until: f64) -> f64 {
    peak(name, value, from, until).0
}

pub fn lowest(name: &str, value: Value, from: f64, until: f64) -> f64 {
    between(name, from, until)
        .map(value)
        .fold(f64::INFINITY, f64::min)
}

pub fn mean(numbers: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = numbers.fold((0.0, 0), |(sum, count), x| (sum + x, count + 1));
    sum / f64::from(count)
}

/// The mean alkalinity of a day, dKH.
pub fn kh(name: &str, day: u32) -> f64 {
    let from = f64::from(day);
    mean(between(name, from, from + 1.0).map(|r| r.alkalinity_meq_per_l)) / MEQ_PER_DKH
}

/// The first day on which a value is above a limit.
pub fn first_above(name: &str, value: Value, limit: f64) -> Option<f64> {
    let readings = &tank(name).readings;
    readings
        .iter()
        .find(|r| value(r) > limit)
        .map(|r| days(r.minute))
}

/// The end of the last instant with total ammonia or nitrite of 0.15 mg N/L or more; 56 if never.
pub fn clean_day(name: &str) -> f64 {
    let dirty = |r: &&Reading| TAN(r) >= 0.15 || NITRITE(r) >= 0.15;
    let readings = &tank(name).readings;
    readings.iter().rfind(dirty).map_or(0.0, |r| days(r.minute))
}

/// Hours after an instant of the evening until CO2 is half of what it was then; where the night is
/// too short for that, at the pace it fell by nine in the morning.
pub fn half_time_h(name: &str, day: u32, hour: f64) -> f64 {
    let (start, morning) = (at(name, day, hour), at(name, day + 1, 9.0));
    let half = tank(name)
        .readings
        .iter()
        .find(|r| r.minute > start.minute && CO2(r) <= 0.5 * CO2(start))
        .filter(|r| r.minute <= morning.minute);
    let hours = |r: &Reading| f64::from(r.minute - start.minute) / 60.0;
    match half {
        Some(reading) => hours(reading),
        None => hours(morning) * 2f64.ln() / (CO2(start) / CO2(morning)).ln(),
    }
}

/// Weight of a stand.
pub fn stand(name: &str, stand: usize, day: u32) -> f64 {
    at(name, day, 0.0).stands_g[stand]
}
