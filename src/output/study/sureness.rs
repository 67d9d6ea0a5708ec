//! How sure what was found is, in words: how far it has converged, and whether its shares can be.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::{Index, Kind};
use crate::analysis::study::findings::judged::Judged;
use crate::analysis::study::findings::sizes::{DONE_BELOW, Size};
use crate::base::shown::grouped;
use crate::output::chart::words::number;
use crate::output::text::words::{counted, list};

use super::Story;

/// Most inputs that are named.
const NAMED: usize = 3;
/// By how much a share alone may lie above that with others (judgement: less is hardly seen, and strays by chance).
const STRAYS: f64 = 0.02;

/// Whether shares are such as none can be, for so few members: more than all of the variance, or more alone than with
/// others.
pub fn is_rough(alone: f64, with_others: f64) -> bool {
    with_others > 1.0 || alone > with_others + STRAYS
}

/// That shares are such as none can be, and why.
pub fn rough(found: &Found) -> Option<String> {
    let alone = |total: &Index| found.at(Kind::First, total.factor);
    let all = found.of(Kind::Total);
    let mut pairs = all.filter_map(|total| Some((alone(total)?.value, total.value)));
    let is_one = pairs.any(|(alone, with_others)| is_rough(alone, with_others));
    let words =
        "shares above 100 %, or larger alone than in all, are what too few members make of them";
    is_one.then(|| words.to_string())
}

/// Which inputs may be as strong as the strongest, by the intervals of what leads. Ranks do not tell how strong an input
/// is, and distances have no interval.
fn order(story: &Story<'_>, found: &Found, judged: &Judged) -> Option<String> {
    if matches!(judged.leading, Kind::Rank | Kind::Pawn) {
        return None;
    }
    let size = |factor: usize| Some(found.at(judged.leading, factor)?.size());
    let [least, _] = size(judged.strongest())?;
    let others = judged.order.iter().skip(1).map(|(factor, _)| *factor);
    let alike = others.filter(|factor| size(*factor).is_some_and(|[_, most]| most >= least));
    let names: Vec<String> = alike
        .map(|factor| story.findings.factors[factor].name.clone())
        .collect();
    let strongest = &story.findings.factors[judged.strongest()].name;
    match names.as_slice() {
        [] => None,
        few if few.len() <= NAMED => Some(format!("{} may be as strong as {strongest}", list(few))),
        many => Some(format!(
            "{} others may be as strong as {strongest}",
            many.len()
        )),
    }
}

/// How far it has converged, and what would be needed.
pub fn sure(story: &Story<'_>, found: &Found, judged: &Judged) -> Option<String> {
    let last = found.sizes.last()?;
    let of = match found.of(Kind::MuStar).next() {
        Some(_) => "a mean effect, over the largest,",
        None if story.study.method.ranks_alone() => "a rank correlation",
        None => "a total share",
    };
    let about = &story.findings.factors[last.factor].name;
    let members = counted(last.members as usize, "member");
    let widest = number(last.widest, 3);
    let words = format!("widest interval of {of} {widest} at {members} ({about})");
    let ranks = match judged.leading == Kind::Rank && !story.study.method.ranks_alone() {
        true => format!("; of a rank correlation {}", number(widest_rank(found), 3)),
        false => String::new(),
    };
    let order = order(story, found, judged).map_or(String::new(), |words| format!("; {words}"));
    Some(match last.is_done() {
        true => format!("{words}: below {DONE_BELOW}, done{ranks}"),
        false => {
            let needed = needed(last);
            let about = match found.carried_by_few() {
                Some(_) => "at least",
                None => "about",
            };
            format!(
                "{words}: {DONE_BELOW} would take {about} {} members{ranks}{order}",
                grouped(needed as usize)
            )
        }
    })
}

fn widest_rank(found: &Found) -> f64 {
    let ranks = found.of(Kind::Rank);
    ranks.map(Index::width).fold(0.0, f64::max)
}

/// How many members would do: intervals narrow with the root of their number; to the next power of two.
fn needed(size: &Size) -> u64 {
    let times = size.widest / DONE_BELOW;
    let members = (size.members as f64 * times * times).ceil();
    (members as u64).next_power_of_two()
}

/// How wide the widest interval of what leads is by now.
pub fn widest(found: &Found, judged: &Judged) -> Option<f64> {
    match judged.leading {
        Kind::Rank => Some(widest_rank(found)),
        Kind::Pawn => None,
        _ => Some(found.sizes.last()?.widest),
    }
}
