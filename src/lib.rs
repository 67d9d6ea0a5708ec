//! # firstfill
//!
//! The first eight weeks of a newly filled planted freshwater aquarium, simulated step by step.
//!
//! ```text
//!  cli                    words typed in, exit code out                             storey 6
//!  scenario |  output     files in  |  files out                                    storey 5
//!  analysis               what a run means: milestones, the ready day, gas tuning   storey 4
//!  engine                 time: timers, events, one step, the ledger, one run       storey 3
//!  model                  what can change: pools, rows, parameters, processes       storey 2
//!  chemistry              water at rest: pH, ammonia, gas solubility                storey 1
//!  base                   numbers, maths, units, sources (no tank words)            storey 0
//! ```
//!
//! Ground first: a storey uses its own and those below it, never one above (a test reads the
//! source and says so). `scenario` and `output` are neighbours that do not know each other.
//!
//! # The engine as a laboratory
//!
//! Any batch test can be set up without a scenario file: pick the processes that act, put in what is
//! there, hold what the test holds, and run. A nitrifying bottle:
//!
//! ```
//! use firstfill::engine::laboratory::{Laboratory, LaboratoryError};
//! use firstfill::model::pool::Pool;
//!
//! let bottle = Laboratory::bottle(1.0)
//!     .only(&["ammonia_oxidation", "nitrite_oxidation", "nitrifier_loss"])
//!     .temperature(25.0)
//!     .parameter("mu_AOB", 0.9)                 // /day at 20 °C
//!     .dissolved(Pool::Tan, 10.0)               // mg N/L
//!     .dissolved(Pool::Oxygen, 8.0)             // mg/L
//!     .amount(Pool::AmmoniaOxidisers, 0.5)      // mg COD
//!     .amount(Pool::NitriteOxidisers, 0.1)
//!     .hold(&[Pool::Oxygen])                    // an air stone
//!     .hold_ph(7.5);                            // a buffer
//! let test = bottle.run(10.0)?;                 // days
//!
//! // ammonia goes, nitrite comes and goes, and in the end nearly all of it is nitrate
//! let highest_nitrite = test
//!     .samples()
//!     .iter()
//!     .map(|sample| sample.reading.nitrite_mg_n_per_l)
//!     .fold(0.0, f64::max);
//! let end = &test.last().reading;
//! assert!(highest_nitrite > 3.0);
//! assert!(end.tan_mg_n_per_l < 0.1 && end.nitrite_mg_n_per_l < 0.1);
//! assert!(end.nitrate_mg_n_per_l > 9.5);
//! assert!((end.ph - 7.5).abs() < 1e-6);
//! # Ok::<(), LaboratoryError>(())
//! ```
//!
//! Matrix, rate laws and steps are those of every run; see [`engine::laboratory`].
//!
//! # A study from Rust
//!
//! Which unknowns matter, as `firstfill study` asks it: read a study, run its rows, take them in as they come. Rows are
//! handed over in their order and are not kept, so a study may have any number of them.
//!
//! ```
//! use std::path::Path;
//! use firstfill::analysis::study::{findings::Gathering, run};
//! use firstfill::base::stop::Stop;
//! use firstfill::scenario::study::{Asking, load};
//!
//! let few = Asking { members: Some(16), seed: None };
//! let loaded = load(Path::new("scenarios/studies/what-matters.toml"), few)?;
//! let mut gathering = Gathering::new(&loaded.study);
//! run::run(&loaded.study, &loaded.family, 0..loaded.study.rows(), &Stop::default(), |batch| {
//!     batch.iter().for_each(|ran| gathering.take(&ran.row));
//!     Ok::<(), std::io::Error>(())
//! })?;
//! let findings = gathering.findings();
//! assert_eq!(findings.counts.members, 16);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

#![warn(clippy::disallowed_methods)]
#![warn(
    clippy::print_stdout,
    clippy::print_stderr,
    clippy::exit,
    clippy::unwrap_used,
    clippy::dbg_macro,
    clippy::todo
)]

pub mod analysis;
pub mod base;
pub mod chemistry;
pub mod cli;
pub mod engine;
pub mod model;
pub mod output;
pub mod scenario;
