//! The limits of a calendar.

/// A limit of a calendar, by what breaks it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Broken {
    /// Ready too late.
    Late,
    /// Too much total ammonia.
    Tan,
    /// Too much nitrite.
    Nitrite,
}

impl Broken {
    /// All of them.
    pub const ALL: [Broken; 3] = [Broken::Late, Broken::Tan, Broken::Nitrite];
}
