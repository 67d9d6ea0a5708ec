//! Which number leads for a milestone: decided here and nowhere else, for tables, charts and words alike.
//!
//! ```text
//! nothing against the numbers of the method                these lead: shares, mean effects, ranges, ranks
//! many days beyond the run, or few runs carry the variance
//!   there are ranks                                        ranks lead, with distances
//!   there are distances only                               distances lead
//!   there are neither                                      the numbers of the method, to be read with care
//! ```

use super::Found;
use super::index::Kind;

/// What leads of the numbers that methods give, in this order, where it was worked out.
const OF_METHODS: [Kind; 5] = [
    Kind::Total,
    Kind::MuStar,
    Kind::Range,
    Kind::Rank,
    Kind::Pawn,
];

/// Why the number leads that does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Footing {
    /// It is what the method gives, and nothing speaks against it.
    Own,
    /// It is a rank, with a distance: what the method gives tells too little.
    Ranks,
    /// It is a distance: what the method gives tells too little, and there are too few runs for ranks.
    Distances,
    /// It is what the method gives, though that tells too little: there is nothing better.
    Care,
}

/// The number that leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lead {
    /// Of which kind it is.
    pub kind: Kind,
    /// Why it leads.
    pub footing: Footing,
}

impl Found {
    /// The number that leads; none where nothing was worked out.
    pub fn lead(&self) -> Option<Lead> {
        let has = |kind: &Kind| self.of(*kind).next().is_some();
        let own = OF_METHODS.into_iter().find(has)?;
        let (kind, footing) = match self.tells_too_little() {
            false => (own, Footing::Own),
            true if has(&Kind::Rank) => (Kind::Rank, Footing::Ranks),
            true if has(&Kind::Pawn) => (Kind::Pawn, Footing::Distances),
            true => (own, Footing::Care),
        };
        Some(Lead { kind, footing })
    }

    /// Whether what the method gives is the ready day of too few, or hangs on a few runs.
    fn tells_too_little(&self) -> bool {
        self.is_late() || self.carried_by_few().is_some()
    }

    /// What the method gives that ranks or distances stand in for; none of methods that give these themselves.
    pub fn stood_in_for(&self) -> Option<Kind> {
        let has = |kind: &Kind| self.of(*kind).next().is_some();
        let own = OF_METHODS.into_iter().find(has)?;
        Some(own).filter(|own| !matches!(own, Kind::Rank | Kind::Pawn))
    }
}
