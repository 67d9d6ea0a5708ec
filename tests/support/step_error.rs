//! How far a run with the default step is from one with steps many times finer.
//!
//! For every quantity that the charts draw, as a share of the range it runs through: the largest
//! difference over all readings of eight weeks. Gas that is tuned is tuned once, with the default
//! step, so that both runs get the same gas.

use std::path::Path;

use firstfill::analysis::case::Case;
use firstfill::engine::event::Event;
use firstfill::engine::input::{GasPlan, ModelInput, TimerLine};
use firstfill::engine::plan::Plan;
use firstfill::engine::result::{Reading, Side};
use firstfill::engine::simulation::{Simulation, Watcher};
use firstfill::engine::valve::Valves;

/// A quantity of the charts: its name and how it is read off.
pub type Charted = (&'static str, fn(&Reading) -> f64);

/// Everything that charts draw of a run.
pub const CHARTED: [Charted; 16] = [
    ("total ammonia", |r| r.tan_mg_n_per_l),
    ("free ammonia", |r| r.free_ammonia_mg_n_per_l),
    ("nitrite", |r| r.nitrite_mg_n_per_l),
    ("nitrate", |r| r.nitrate_mg_n_per_l),
    ("oxygen", |r| r.oxygen_mg_per_l),
    ("CO2", |r| r.co2_mg_per_l),
    ("CO2 as the indicator shows it", |r| {
        r.indicator_co2_mg_per_l
    }),
    ("pH", |r| r.ph),
    ("alkalinity", |r| r.alkalinity_meq_per_l),
    ("ammonia capacity", |r| r.ammonia_capacity_mg_n_per_day),
    ("nitrite capacity", |r| r.nitrite_capacity_mg_n_per_day),
    ("nitrogen in soil", |r| {
        r.soil_ammonium_mg_n + r.soil_organic_n_mg
    }),
    ("nitrogen in plants", |r| r.plants_mg_n),
    ("nitrogen in algae", |r| r.algae_mg_n),
    ("nitrogen in detritus", |r| r.detritus_mg_n),
    ("temperature", |r| r.temperature_c),
];

/// One number per charted quantity.
pub type Shares = [f64; CHARTED.len()];

/// How many times finer the run is that stands for the exact one.
pub const FINEST: u32 = 16;

/// A quantity that hardly moves is held against this share of its size, not against its range: no
/// axis of a chart spans less.
const LEAST_RANGE: f64 = 0.01;

/// What a run passed through: the charted quantities at every reading, with its minute.
#[derive(Default)]
pub struct Track(Vec<(u32, Shares)>);

impl Watcher for Track {
    fn wants(&self, _: u32, _: Side) -> bool {
        true
    }
    fn see(&mut self, reading: &Reading, _: &Simulation<'_>) {
        self.note(reading);
    }
    fn happened(&mut self, _: &Event, _: f64, _: &Reading, _: &Reading) {}
}

impl Track {
    /// Takes a reading down.
    pub fn note(&mut self, reading: &Reading) {
        let values = CHARTED.map(|(_, value)| value(reading));
        self.0.push((reading.minute, values));
    }

    /// The minutes of the readings, each once.
    pub fn minutes(&self) -> Vec<u32> {
        let mut minutes: Vec<u32> = self.0.iter().map(|(minute, _)| *minute).collect();
        minutes.dedup();
        minutes
    }

    /// Of a run with every part of a step cut into `finer` equal ones.
    pub fn of(input: &ModelInput, finer: u32) -> Track {
        let mut plan = Plan::new(input);
        plan.shortening.finer = finer;
        let mut tank = Simulation::filled(&plan);
        let mut valves = Valves::new(&plan);
        let mut track = Track::default();
        valves
            .take(&mut tank, input.end_minute(), &mut track)
            .unwrap();
        track
    }

    /// The largest differences from another run, as shares of the ranges of that one.
    pub fn apart(&self, exact: &Track) -> Shares {
        assert_eq!(self.0.len(), exact.0.len());
        std::array::from_fn(|place| {
            let values = || exact.0.iter().map(|(_, values)| values[place]);
            let (low, high) = (
                values().fold(f64::MAX, f64::min),
                values().fold(f64::MIN, f64::max),
            );
            let range = (high - low)
                .max(LEAST_RANGE * high.abs())
                .max(f64::MIN_POSITIVE);
            let pairs = self.0.iter().zip(values());
            pairs
                .map(|((_, values), exact)| (values[place] - exact).abs() / range)
                .fold(0.0, |worst, share| {
                    if share > worst || share.is_nan() {
                        share
                    } else {
                        worst
                    }
                })
        })
    }
}

/// The errors of the default step on a tank.
pub fn of_default_step(input: &ModelInput) -> Shares {
    let input = as_tuned(input);
    Track::of(&input, 1).apart(&Track::of(&input, FINEST))
}

/// The same tank with the gas that tuning finds as plain rates.
pub fn as_tuned(input: &ModelInput) -> ModelInput {
    let mut plain = input.clone();
    plain.lookahead_days = 0;
    if let GasPlan::Hold { .. } = input.gas {
        let tuned = firstfill::engine::run::run(&plain).unwrap();
        plain.gas = GasPlan::Rate {
            lines: (tuned.tunings.iter())
                .map(|tuning| TimerLine {
                    from_day: tuning.day,
                    window: tuning.window,
                    value: tuning.gas_mg_per_h,
                })
                .collect(),
            cut_off_mg_per_l: None,
        };
    }
    plain
}

/// The largest of them, with its name.
pub fn worst(shares: &Shares) -> (&'static str, f64) {
    let mut worst = (CHARTED[0].0, shares[0]);
    for ((name, _), &share) in CHARTED.iter().zip(shares) {
        if share > worst.1 || share.is_nan() {
            worst = (name, share);
        }
    }
    worst
}

/// Every shipped scenario with its name, in order of names.
pub fn shipped() -> Vec<(String, Case)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios");
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "toml"))
        .collect();
    files.sort();
    let case = |path: &std::path::PathBuf| {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let loaded = firstfill::scenario::load(path);
        (
            name,
            loaded
                .unwrap_or_else(|_| panic!("{} loads", path.display()))
                .case,
        )
    };
    files.iter().map(case).collect()
}
