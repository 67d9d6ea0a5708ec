//! What matters for a milestone, what may be ignored, and what works together.
//!
//! An input matters where its interval lies above one bound, and may be ignored where it lies below another; between
//! them it does little, or too few runs were made to tell. Bounds are judgement. Nothing is said for sure of a share, or
//! of a mean effect, that has no interval, or of a variance that a few runs carry.

use super::Found;
use super::index::{Index, Kind};

/// What leads the verdict, in this order, where it was worked out.
const LEADING: [Kind; 4] = [Kind::Total, Kind::MuStar, Kind::Range, Kind::Rank];
/// Members below which nothing is said to be ignorable: fewer cannot tell a share below the bound from none.
const MEMBERS_TO_IGNORE: [(Kind, u64); 2] = [(Kind::Total, 100), (Kind::MuStar, 10)];
/// What an input does with others counts from this share of the variance, and two alone from this.
const TOGETHER: f64 = 0.02;
const PAIR: f64 = 0.01;
/// An input whose distance is so many times that by chance moves the output, whichever way.
const MOVES: f64 = 2.0;

/// How an input stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// It matters.
    Matters,
    /// It moves the output, but not one way: ranks do not see it.
    Bends,
    /// It does little, or that is not known yet.
    Between,
    /// It may be ignored within its spread.
    Ignorable,
}

/// How all inputs stand for one milestone.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// The kind of number that leads.
    pub leading: Kind,
    /// Every factor with how it stands, the strongest first.
    pub order: Vec<(usize, Standing)>,
    /// Factors that do much with others, as (factor, share), most first.
    pub together: Vec<(usize, f64)>,
    /// Pairs that do much by twos, as (factor, factor, share), most first.
    pub pairs: Vec<(usize, usize, f64)>,
}

/// From where an input matters, and below what it may be ignored.
fn bounds(kind: Kind, largest: f64) -> [f64; 2] {
    match kind {
        Kind::Total => [0.05, 0.01],
        Kind::Rank => [0.1, 0.05],
        _ => [0.1 * largest, 0.02 * largest],
    }
}

/// Judges a milestone; none where nothing was worked out, as where it never changes.
pub fn judged(found: &Found) -> Option<Judged> {
    let leading = leading(found)?;
    let mut indices: Vec<&Index> = found.of(leading).collect();
    indices.sort_by(|a, b| b.value.abs().total_cmp(&a.value.abs()));
    let largest = indices.first()?.value.abs();
    if largest == 0.0 {
        return None;
    }
    let stands = |index: &&Index| (index.factor, standing(found, index, largest));
    Some(Judged {
        leading,
        order: indices.iter().map(stands).collect(),
        together: together(found),
        pairs: pairs(found),
    })
}

impl Judged {
    /// The factors that stand so, the strongest first.
    pub fn all(&self, standing: Standing) -> Vec<usize> {
        let such = self.order.iter().filter(|(_, stands)| *stands == standing);
        such.map(|(factor, _)| *factor).collect()
    }

    /// The strongest.
    pub fn strongest(&self) -> usize {
        self.order[0].0
    }
}

fn leading(found: &Found) -> Option<Kind> {
    let has = |kind: &Kind| found.of(*kind).next().is_some();
    if found.ranks_lead() && has(&Kind::Rank) {
        return Some(Kind::Rank);
    }
    LEADING.into_iter().find(has)
}

fn standing(found: &Found, index: &Index, largest: f64) -> Standing {
    let [matters, ignorable] = bounds(index.kind, largest);
    let [low, high] = match index.kind {
        // its interval holds the ends of the output
        Kind::Range => [index.value; 2],
        _ => index.size(),
    };
    let moves = index.kind == Kind::Rank && moves(found, index.factor);
    let is_sure = is_sure(found, index);
    match (
        is_sure && low >= matters,
        is_sure && high < ignorable && may_tell(found, index.kind),
        moves,
    ) {
        (true, ..) => Standing::Matters,
        (_, _, true) => Standing::Bends,
        (_, true, _) => Standing::Ignorable,
        _ => Standing::Between,
    }
}

/// Whether a number is more than what a few runs, or a handful of members, happened to show.
fn is_sure(found: &Found, index: &Index) -> bool {
    match index.kind {
        Kind::Total | Kind::MuStar => index.interval.is_some() && found.carried_by_few().is_none(),
        _ => true,
    }
}

/// Whether there are members enough to tell what may be ignored.
fn may_tell(found: &Found, kind: Kind) -> bool {
    if kind == Kind::Range {
        return false; // what an input does alone says nothing of what it does with others
    }
    too_few_to_ignore(found, kind).is_none()
}

/// How many members it takes to tell what may be ignored, where there are fewer.
pub fn too_few_to_ignore(found: &Found, kind: Kind) -> Option<u64> {
    let members = found.sizes.last().map_or(0, |size| size.members);
    let needed = MEMBERS_TO_IGNORE.iter().find(|(of, _)| *of == kind);
    needed
        .map(|(_, needed)| *needed)
        .filter(|needed| members < *needed)
}

/// Whether an input moves the distribution of the output well beyond chance.
fn moves(found: &Found, factor: usize) -> bool {
    let value = |kind| found.at(kind, factor).map(|index| index.value);
    let both = value(Kind::Pawn).zip(value(Kind::PawnByChance));
    both.is_some_and(|(apart, by_chance)| apart > MOVES * by_chance)
}

fn together(found: &Found) -> Vec<(usize, f64)> {
    let much = found
        .of(Kind::Together)
        .filter(|index| index.ends()[0] >= TOGETHER);
    let mut all: Vec<(usize, f64)> = much.map(|index| (index.factor, index.value)).collect();
    all.sort_by(|a, b| b.1.total_cmp(&a.1));
    all
}

fn pairs(found: &Found) -> Vec<(usize, usize, f64)> {
    let much = found
        .of(Kind::Second)
        .filter(|index| index.ends()[0] >= PAIR);
    let pair = |index: &Index| Some((index.factor, index.other?, index.value));
    let mut all: Vec<(usize, usize, f64)> = much.filter_map(pair).collect();
    all.sort_by(|a, b| b.2.total_cmp(&a.2));
    all
}
