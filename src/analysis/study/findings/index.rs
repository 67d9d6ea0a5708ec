//! One number that tells how much an input matters, of one kind, with its interval.

/// What a number tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Share of the variance an input explains alone.
    First,
    /// Share of the variance it has a part in.
    Total,
    /// Total less first: what it does with others.
    Together,
    /// Share of the variance two inputs explain beyond what each does alone.
    Second,
    /// Mean of elementary effects.
    Mu,
    /// Mean of their sizes.
    MuStar,
    /// Their standard deviation.
    Sigma,
    /// Partial rank correlation, from −1 to 1.
    Rank,
    /// How far an input moves the distribution of the output, in the middle slot.
    Pawn,
    /// What an input that does nothing would show there.
    PawnByChance,
    /// From the least to the most along the steps of an input alone; the interval holds these two.
    Range,
    /// The output at its last step less that at its first.
    Rise,
}

impl Kind {
    /// The word for it, in tables.
    pub fn word(self) -> &'static str {
        match self {
            Kind::First => "first",
            Kind::Total => "total",
            Kind::Together => "together",
            Kind::Second => "second",
            Kind::Mu => "mu",
            Kind::MuStar => "mu_star",
            Kind::Sigma => "sigma",
            Kind::Rank => "partial_rank_correlation",
            Kind::Pawn => "pawn_median",
            Kind::PawnByChance => "pawn_by_chance",
            Kind::Range => "range",
            Kind::Rise => "rise",
        }
    }

    /// The word for what it is worked out by, in tables.
    pub fn method(self) -> &'static str {
        match self {
            Kind::First | Kind::Total | Kind::Together | Kind::Second => "variance",
            Kind::Mu | Kind::MuStar | Kind::Sigma => "trajectories",
            Kind::Rank => "rank",
            Kind::Pawn | Kind::PawnByChance => "pawn",
            Kind::Range | Kind::Rise => "one-at-a-time",
        }
    }

    /// Whether it is in the unit of the milestone; else it has none.
    pub fn is_in_units(self) -> bool {
        use Kind::{Mu, MuStar, Range, Rise, Sigma};
        matches!(self, Mu | MuStar | Sigma | Range | Rise)
    }
}

/// One number about one factor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Index {
    /// What it tells.
    pub kind: Kind,
    /// What it is about, by its place among the factors.
    pub factor: usize,
    /// The second factor of a pair.
    pub other: Option<usize>,
    /// The number.
    pub value: f64,
    /// Between what it lies, 95 of 100 times.
    pub interval: Option<[f64; 2]>,
}

impl Index {
    /// A number about one factor.
    pub fn new(kind: Kind, factor: usize, value: f64, interval: Option<[f64; 2]>) -> Index {
        Index {
            kind,
            factor,
            other: None,
            value,
            interval,
        }
    }

    /// Between what it lies, or the number itself where that is not known.
    pub fn ends(&self) -> [f64; 2] {
        self.interval.unwrap_or([self.value; 2])
    }

    /// How wide its interval is; 0 where there is none.
    pub fn width(&self) -> f64 {
        let [low, high] = self.ends();
        high - low
    }

    /// Between what its size lies, whatever its sign.
    pub fn size(&self) -> [f64; 2] {
        let [low, high] = self.ends();
        let farthest = low.abs().max(high.abs());
        match low < 0.0 && high > 0.0 {
            true => [0.0, farthest],
            false => [low.abs().min(high.abs()), farthest],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_size_of_an_interval_about_nothing_begins_at_nothing() {
        let size = |low, high| Index::new(Kind::Rank, 0, 0.0, Some([low, high])).size();
        assert_eq!(size(-0.1, 0.3), [0.0, 0.3]);
        assert_eq!(size(-0.4, -0.2), [0.2, 0.4]);
        assert_eq!(size(0.2, 0.4), [0.2, 0.4]);
    }
}
