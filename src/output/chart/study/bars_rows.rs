//! The rows of a chart of bars: the strongest inputs one by one, the others as one.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::{Index, Kind};
use crate::analysis::study::findings::judged::Judged;

/// Most inputs that have a row of their own.
const MOST: usize = 12;

/// What is drawn of a milestone.
#[derive(Debug, Clone, PartialEq)]
pub struct Rows {
    /// The kind of number a bar shows.
    pub kind: Kind,
    /// The kind told beside it.
    pub beside: Kind,
    /// The strongest, strongest first.
    pub own: Vec<Row>,
    /// The others.
    pub rest: Option<Rest>,
}

/// One input.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Which one.
    pub factor: usize,
    /// What its bar shows.
    pub index: Index,
    /// What is told beside it.
    pub beside: Option<Index>,
}

/// The inputs without a row.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rest {
    /// How many.
    pub count: usize,
    /// Of shares their sum, which is no less than what they have a part in together; else the largest size.
    pub value: f64,
    /// The sum of what they explain alone; 0 of numbers that are no shares.
    pub beside: f64,
}

impl Rows {
    /// The rows of a milestone.
    pub fn of(found: &Found, judged: &Judged) -> Rows {
        let (kind, beside) = match judged.leading {
            Kind::Total => (Kind::Total, Kind::First),
            Kind::Rank => (Kind::Rank, Kind::Pawn),
            Kind::Pawn => (Kind::Pawn, Kind::PawnByChance),
            other => (other, Kind::Rise),
        };
        let row = |factor: usize| {
            Some(Row {
                factor,
                index: *found.at(kind, factor)?,
                beside: found.at(beside, factor).copied(),
            })
        };
        let mut own: Vec<Row> = judged
            .order
            .iter()
            .filter_map(|(factor, _)| row(*factor))
            .collect();
        // one alone needs no name for the others
        let most = if own.len() == MOST + 1 {
            MOST + 1
        } else {
            MOST
        };
        let others = own.split_off(most.min(own.len()));
        Rows {
            kind,
            beside,
            own,
            rest: rest(&others, kind),
        }
    }

    /// How many rows there are.
    pub fn count(&self) -> usize {
        self.own.len() + usize::from(self.rest.is_some())
    }

    /// Every value that is drawn.
    pub fn values(&self) -> impl Iterator<Item = f64> {
        let own = self.own.iter().flat_map(|row| {
            let ends = if self.kind == Kind::Range {
                [row.index.value; 2]
            } else {
                row.index.ends()
            };
            ends.into_iter().chain([row.index.value])
        });
        let rest = self.rest.filter(|_| self.kind == Kind::Total);
        own.chain(rest.map(|rest| rest.value))
    }
}

fn rest(others: &[Row], kind: Kind) -> Option<Rest> {
    let sizes = || others.iter().map(|row| row.index.value.abs());
    let alone = others.iter().filter_map(|row| row.beside);
    let (value, beside) = match kind {
        Kind::Total => (sizes().sum(), alone.map(|first| first.value.max(0.0)).sum()),
        _ => (sizes().fold(0.0, f64::max), 0.0),
    };
    (!others.is_empty()).then_some(Rest {
        count: others.len(),
        value,
        beside,
    })
}
