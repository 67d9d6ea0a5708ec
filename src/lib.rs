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
