//! Storey 3: time. Timers, events, one step, the ledger, one run.

pub mod event;
pub mod input;
pub mod ledger;
pub mod notice;
pub mod result;
