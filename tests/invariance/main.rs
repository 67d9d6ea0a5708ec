//! What must not matter: hours and orders, how long one looks, pauses, threads, sizes and units.
//!
//! Where a run must be the same it must be the same to the last bit; elsewhere the test says how near,
//! and why.

#[path = "../support/mod.rs"]
mod support;

mod clock;
mod company;
mod order;
mod pause;
mod side_by_side;
mod size;
mod units;
