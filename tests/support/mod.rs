//! Shared by the tests: the reference runs as inputs of the engine.
#![allow(dead_code)]

pub mod reference;
