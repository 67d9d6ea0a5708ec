//! What came of asking for a key: nothing, a mistake, or a value with its place.

use super::problem::Place;

/// What came of asking for a key.
#[derive(Debug, Clone)]
pub enum Read<T> {
    /// Not written, or written as `"none"`.
    Absent,
    /// Written, but wrong; the problem is told.
    Bad(Place),
    /// Written and understood.
    Given(T, Place),
}

impl<T> Read<T> {
    /// The value, if it was given.
    pub fn value(self) -> Option<T> {
        match self {
            Read::Given(value, _) => Some(value),
            _ => None,
        }
    }
    /// A look at the value, if it was given.
    pub fn seen(&self) -> Option<&T> {
        match self {
            Read::Given(value, _) => Some(value),
            _ => None,
        }
    }
    /// The value, or a stand-in where it is absent or wrong.
    pub fn or(self, stand_in: T) -> T {
        self.value().unwrap_or(stand_in)
    }
    /// Where it is written, right or wrong.
    pub fn place(&self) -> Option<&Place> {
        match self {
            Read::Absent => None,
            Read::Bad(place) | Read::Given(_, place) => Some(place),
        }
    }
    /// Whether nothing is written.
    pub fn is_absent(&self) -> bool {
        matches!(self, Read::Absent)
    }
    /// Whether it is written and wrong.
    pub fn is_bad(&self) -> bool {
        matches!(self, Read::Bad(_))
    }
    /// The same with another value.
    pub fn map<U>(self, change: impl FnOnce(T) -> U) -> Read<U> {
        match self {
            Read::Absent => Read::Absent,
            Read::Bad(place) => Read::Bad(place),
            Read::Given(value, place) => Read::Given(change(value), place),
        }
    }
}
