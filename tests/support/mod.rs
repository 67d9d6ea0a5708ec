//! Shared by the tests: the reference runs as inputs of the engine, a tank to take apart, tanks drawn
//! at random, ways to drive and to read a run.
#![allow(dead_code)]

pub mod bands;
pub mod bottle;
pub mod check;
pub mod course;
pub mod diary;
pub mod drive;
pub mod greedy;
pub mod least_squares;
pub mod page;
pub mod peer;
pub mod planted_tank;
pub mod random_tank;
pub mod reference;
pub mod short_tank;
pub mod step_error;
pub mod stream;
pub mod study;
pub mod table;
