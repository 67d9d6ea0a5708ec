//! Storey 3: time. Timers, events, one step, the ledger, one run.

pub mod error;
pub mod event;
pub mod gauge;
pub mod happening;
pub mod input;
pub mod laboratory;
pub mod ledger;
pub mod notice;
pub mod plan;
pub mod recorder;
pub mod result;
pub mod run;
pub mod simulation;
pub mod step;
pub mod timers;
mod tuning;
pub mod valve;
