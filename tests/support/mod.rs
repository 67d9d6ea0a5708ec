//! Shared by the tests: the reference runs as inputs of the engine, and a tank to take apart.
#![allow(dead_code)]

pub mod planted_tank;
pub mod reference;
