//! What matters for a milestone, what may be ignored, and what works together.
//!
//! An input matters where its interval lies above one bound, and may be ignored where it lies below another; between
//! them it does little, or too few runs were made to tell. Bounds are judgement. Nothing is said for sure of a share, or
//! of a mean effect, that has no interval, or that is to be read with care.
//!
//! A rank tells how regularly an input moves the output, not how far: beside others that move it more, one that does
//! next to nothing may have a rank of 1. So by ranks an input matters only where its distance too is more than chance,
//! and those that matter stand by their distances.

use super::Found;
use super::index::{Index, Kind};
use super::lead::{Footing, Lead};

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
    /// It moves the output one way, but not far: its rank is large and its distance no more than chance.
    Regular,
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
    /// Why it leads.
    pub footing: Footing,
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
    let lead = found.lead()?;
    let mut indices: Vec<&Index> = found.of(lead.kind).collect();
    indices.sort_by(|a, b| b.value.abs().total_cmp(&a.value.abs()));
    let largest = indices.first()?.value.abs();
    if largest == 0.0 {
        return None;
    }
    let stands = |index: &&Index| (index.factor, standing(found, lead, index, largest));
    let mut order: Vec<(usize, Standing)> = indices.iter().map(stands).collect();
    if lead.kind == Kind::Rank {
        by_distance(found, &mut order);
    }
    Some(Judged {
        leading: lead.kind,
        footing: lead.footing,
        order,
        together: together(found),
        pairs: pairs(found),
    })
}

/// Puts those that matter first, the one that moves the output furthest before all; the others stay by their ranks.
fn by_distance(found: &Found, order: &mut [(usize, Standing)]) {
    let far = |&(factor, standing): &(usize, Standing)| match standing {
        Standing::Matters => distance(found, factor).map_or(0.0, |distance| distance.apart),
        _ => -1.0,
    };
    order.sort_by(|a, b| far(b).total_cmp(&far(a)));
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

fn standing(found: &Found, lead: Lead, index: &Index, largest: f64) -> Standing {
    let [matters, ignorable] = bounds(index.kind, largest);
    let [low, high] = match index.kind {
        // its interval holds the ends of the output
        Kind::Range => [index.value; 2],
        _ => index.size(),
    };
    let is_sure = is_sure(lead, index);
    let is_large = is_sure && low >= matters;
    let is_small = is_sure && high < ignorable && may_tell(found, index.kind);
    let moves = |times| distance(found, index.factor).is_some_and(|distance| distance.moves(times));
    match index.kind {
        Kind::Rank if is_large && moves(Above::Chance) => Standing::Matters,
        Kind::Rank if moves(Above::Well) => Standing::Bends,
        Kind::Rank if is_large && distance(found, index.factor).is_some() => Standing::Regular,
        Kind::Rank if is_large => Standing::Between,
        // with fewer runs than ranks take, inputs go along with each other by chance
        Kind::Pawn => Standing::Between,
        _ if is_large => Standing::Matters,
        _ if is_small => Standing::Ignorable,
        _ => Standing::Between,
    }
}

/// Whether a number is more than what a few runs, or a handful of members, happened to show.
fn is_sure(lead: Lead, index: &Index) -> bool {
    match index.kind {
        Kind::Total | Kind::MuStar => index.interval.is_some() && lead.footing != Footing::Care,
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

/// How far an input moves the distribution of the output, and what chance alone would do.
#[derive(Debug, Clone, Copy)]
struct Distance {
    apart: f64,
    by_chance: f64,
    most_by_chance: f64,
}

/// How far beyond chance.
#[derive(Debug, Clone, Copy)]
enum Above {
    /// Further than 97 or 98 of 100 inputs that do nothing.
    Chance,
    /// So much further that no other sign is needed.
    Well,
}

fn distance(found: &Found, factor: usize) -> Option<Distance> {
    let by_chance = found.at(Kind::PawnByChance, factor)?;
    Some(Distance {
        apart: found.at(Kind::Pawn, factor)?.value,
        by_chance: by_chance.value,
        most_by_chance: by_chance.ends()[1],
    })
}

impl Distance {
    fn moves(&self, above: Above) -> bool {
        self.apart
            > match above {
                Above::Chance => self.most_by_chance,
                Above::Well => self.most_by_chance.max(MOVES * self.by_chance),
            }
    }
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
