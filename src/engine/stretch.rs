//! What a step is given, what it changes, and what it shows of each of its parts.

use crate::model::held::Held;
use crate::model::state::State;

use super::work::Counts;

/// A length of time with what is switched during it.
#[derive(Debug, Clone, Copy)]
pub struct Stretch<'a, R> {
    /// Start, days since midnight of day 0.
    pub from_days: f64,
    /// Length, days.
    pub days: f64,
    /// What is switched.
    pub held: &'a Held<R>,
}

/// What a step changes.
#[derive(Debug)]
pub struct Books<'a, R> {
    /// The pools.
    pub state: &'a mut State<R>,
    /// Extents of all rows, added up.
    pub totals: &'a mut [R],
    /// Work done.
    pub counts: &'a mut Counts<R>,
}

/// One part of a stretch, done.
#[derive(Debug)]
pub struct Part<'a, R> {
    /// Start, days since midnight of day 0.
    pub from_days: R,
    /// Length, days.
    pub days: R,
    /// Pools at its start.
    pub before: &'a State<R>,
    /// Extents since filling, this part included.
    pub totals: &'a [R],
    /// Whether processes were held back in it.
    pub held_back: bool,
}
