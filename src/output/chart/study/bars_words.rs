//! What stands around the bars: the key, the heads, the name of the scale, the note on distances.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::output::chart::key::Key;
use crate::output::chart::lever_bars::RANGE;
use crate::output::chart::notes::Note;
use crate::output::chart::style::{MUTED, Pen};
use crate::output::chart::words::number;
use crate::output::study::words::unit;

use super::bars::{INNER, OUTER};
use super::titles;

/// What the distances beside ranks would be by chance.
pub(super) fn distance(found: &Found, kind: Kind) -> Option<Note> {
    let by_chance = || found.of(Kind::PawnByChance).map(|index| index.value);
    let (least, most) = (by_chance().reduce(f64::min)?, by_chance().reduce(f64::max)?);
    let [least, most] = [least, most].map(|chance| number(chance, 2));
    let by_chance = match least == most {
        true => format!("about {most}"),
        false => format!("{least} to {most}, by the number of its settings"),
    };
    let rank = match kind {
        Kind::Rank => ", where a rank tells how regularly",
        _ => "",
    };
    let words = format!(
        "how far an input moves the distribution of the result, whichever way{rank}; one that does nothing shows {by_chance}."
    );
    matches!(kind, Kind::Rank | Kind::Pawn).then(|| Note::new("Distance", words))
}

/// How the file of a chart is called before its milestone.
pub(super) fn stem(kind: Kind) -> &'static str {
    match kind {
        Kind::Total => "shares",
        Kind::Rank => "ranks",
        Kind::Pawn => "distances",
        _ => "ranges",
    }
}

/// What bars and intervals are.
pub(super) fn key(kind: Kind) -> Vec<Key> {
    let bar = |(thick, alpha): (f64, f64)| Pen {
        alpha,
        ..Pen::hair(MUTED).wide(thick)
    };
    let interval = Key::Line(RANGE, "so it lies 95 of 100 times");
    match kind {
        Kind::Total => vec![
            Key::Line(bar(INNER), "what it explains alone"),
            Key::Line(bar(OUTER), "what it has a part in, with others"),
            interval,
        ],
        Kind::Rank => vec![
            Key::Line(bar(INNER), "rank correlation, the other inputs held"),
            Key::Line(RANGE, "so the rank lies 95 of 100 times"),
        ],
        Kind::Pawn => vec![Key::Line(bar(INNER), "how far it moves the distribution")],
        _ => vec![Key::Line(
            bar(INNER),
            "from the least to the most, the others in their middle",
        )],
    }
}

/// What the scale measures.
pub(super) fn scale_name(found: &Found, kind: Kind) -> String {
    let the = titles::the(found);
    match kind {
        Kind::Total => format!("share of the variance of {the}"),
        Kind::Pawn => format!("distance of the distribution of {the}"),
        Kind::Rank => format!(
            "← {} {the} · {} →",
            titles::way(found, -1.0),
            titles::way(found, 1.0)
        ),
        _ => {
            let unit = unit(&found.milestone);
            format!("range of {the},{unit}")
                .trim_end_matches(',')
                .to_string()
        }
    }
}

/// Heads of the two columns of numbers.
pub(super) fn heads(kind: Kind) -> [&'static str; 2] {
    match kind {
        Kind::Total => ["alone", "in all"],
        Kind::Rank => ["rank", "distance"],
        Kind::Pawn => ["distance", "by chance"],
        _ => ["range", "rise"],
    }
}
