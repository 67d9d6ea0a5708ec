//! Which number leads and why, in words: many days beyond the run, or few runs that carry the variance. What leads is
//! decided in `findings::lead`; the words follow it.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::factor::is_by_group;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::lead::Footing;

use super::Story;
use super::words::{of_100, share};

/// How many are not ready within the run, and what that does to the numbers; none where all are.
pub fn late(story: &Story<'_>, found: &Found) -> Option<String> {
    if found.outputs.beyond == 0 {
        return None;
    }
    let last = story.study.last_day;
    let many = match of_100(found.share_beyond()) {
        none if none.starts_with("0 ") => {
            format!(
                "{} of {}",
                found.outputs.beyond,
                found.outputs.moments.count()
            )
        }
        many => many,
    };
    let does = match (footing(found), found.is_late()) {
        _ if found.share_beyond() == 1.0 => "nothing can be told of when they would be".to_string(),
        (_, false) | (Footing::Own, _) => {
            "they count as the day after, so numbers tell of the days up to then".to_string()
        }
        (Footing::Care, true) => format!(
            "so many that {} are of the {} cut off at day {} (censored): read them with care, this design can tell nothing better",
            method_gives(found),
            found.milestone.short,
            last + 1
        ),
        (footing, true) => {
            let lead = leads(story, found, footing);
            match found.stood_in_for() {
                Some(_) => format!(
                    "so many that {lead} here, not {}{}",
                    method_gives(found),
                    unsure(footing)
                ),
                None => {
                    "so many that ranks and distances alone are told, which bear it".to_string()
                }
            }
        }
    };
    Some(format!("{many} runs are not ready by day {last}: {does}"))
}

/// That a few runs carry the variance, and what to do then.
pub fn carried(story: &Story<'_>, found: &Found) -> Option<String> {
    let few = few(found)?;
    let hangs = match found.of(Kind::MuStar).next() {
        Some(_) => "mean effects hang",
        None => "shares of it hang",
    };
    let instead = match footing(found) {
        Footing::Care => {
            "nothing is ranked for sure; method = \"latin\" tells ranks and distances, which bear it"
                .to_string()
        }
        footing => format!(
            "{} here{}; method = \"latin\" with as many runs makes them sharper",
            leads(story, found, footing),
            unsure(footing)
        ),
    };
    Some(format!(
        "{few}, so {hangs} on which of these were met: {instead}"
    ))
}

/// The same for the foot of a chart: that they do, and what leads.
pub fn carried_in_short(story: &Story<'_>, found: &Found) -> Option<String> {
    let few = few(found)?;
    Some(match footing(found) {
        Footing::Care => format!("{few}, so nothing is ranked for sure"),
        footing => format!("{few}, so {}", leads(story, found, footing)),
    })
}

/// `40 of 4096 runs, those farthest from the mean, carry 62 % of the variance`.
pub fn few(found: &Found) -> Option<String> {
    let tail = found.carried_by_few()?;
    let (runs, of, share) = (tail.runs, tail.of, share(tail.share));
    let (those, carry) = match runs {
        1 => ("the one", "carries"),
        _ => ("those", "carry"),
    };
    Some(format!(
        "{runs} of {of} runs, {those} farthest from the mean, {carry} {share} of the variance"
    ))
}

/// Why the number leads that does; where there is none, what there would be is to be read with care.
fn footing(found: &Found) -> Footing {
    found.lead().map_or(Footing::Care, |lead| lead.footing)
}

/// `ranks and distances lead`; of a study by group they are those of its inputs.
fn leads(story: &Story<'_>, found: &Found, footing: Footing) -> String {
    let what = match footing {
        Footing::Distances => "distances",
        _ if found.of(Kind::Pawn).next().is_some() => "ranks and distances",
        _ => "ranks",
    };
    match is_by_group(story.study) {
        true => format!("{what} of single inputs lead"),
        false => format!("{what} lead"),
    }
}

/// Distances lead where the runs are too few for ranks, and so for anything sure.
fn unsure(footing: Footing) -> &'static str {
    match footing {
        Footing::Distances => "; of any one input there are too few runs to be sure",
        _ => "",
    }
}

/// What the method gives: `shares of the variance`.
fn method_gives(found: &Found) -> &'static str {
    match found.stood_in_for() {
        Some(Kind::MuStar) => "mean effects",
        Some(Kind::Range) => "ranges",
        _ => "shares of the variance",
    }
}
