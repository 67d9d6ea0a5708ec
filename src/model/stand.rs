//! Plant groups and their numbers. (placeholder: parameters follow)

/// How many stands a tank can hold.
pub const MAX_STANDS: usize = 8;

/// A group of plants that shares its numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Fast stems.
    Stems,
    /// Carpet plants.
    Carpet,
    /// Slow rosettes, rooted.
    Rosette,
    /// Slow rhizome plants tied to wood or stone.
    TiedRhizome,
    /// Mosses and liverworts.
    Moss,
}

/// All groups.
pub const GROUPS: [Group; 5] = [
    Group::Stems,
    Group::Carpet,
    Group::Rosette,
    Group::TiedRhizome,
    Group::Moss,
];

impl Group {
    /// Word used in scenarios.
    pub fn word(self) -> &'static str {
        match self {
            Group::Stems => "stems",
            Group::Carpet => "carpet",
            Group::Rosette => "rosette",
            Group::TiedRhizome => "tied rhizome",
            Group::Moss => "moss",
        }
    }
    /// Ending of its parameter ids and of its column name, for example `P_max_stems`.
    pub fn suffix(self) -> &'static str {
        match self {
            Group::TiedRhizome => "tied_rhizome",
            other => other.word(),
        }
    }
}
