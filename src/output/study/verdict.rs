//! The verdict of a study in words: what matters, what may be ignored, what works together, how sure that is, and
//! what it cannot say. Every sentence is made from what was found.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::judged::{Judged, Standing, judged, too_few_to_ignore};
use crate::analysis::study::method::Method;
use crate::output::text::words::capital;
use crate::output::text::words::{counted, list};

use super::Story;
use super::leads::{carried, late};
use super::ready::in_common;
use super::sureness::{rough, sure};
use super::words::{full_name, meaning, name, of_100, share, takes_settings, told_in_full, value};

/// Most inputs that are named with their numbers, and most that are named without.
const NAMED: usize = 8;
const LISTED: usize = 6;
/// Most pairs, and most inputs that work with others, that are named.
const TOGETHER: usize = 3;

/// A sentence with what it is about in a word.
pub type Sentence = (&'static str, String);

/// All milestones in words, as a text for a file.
pub fn text(story: &Story<'_>) -> String {
    let mut text = format!("{}\n{}\n", story.name, size_of(story));
    for found in &story.findings.found {
        text += &format!("\n{}: {}\n", capital(&title(found)), range(story, found));
        for (label, words) in sentences(story, found) {
            text += &format!("  {label}: {words}\n");
        }
    }
    if let Some(words) = in_common(story) {
        text += &format!("\nIn common: {}\n", capital(&words));
    }
    text += &format!("\n{}\n", cannot_say(story));
    text
}

/// The milestone as a title: `ready day, without animals`.
pub fn title(found: &Found) -> String {
    let short = found.milestone.short;
    match found.milestone.is_of_ripening() {
        true => format!("{short}, without animals"),
        false => short.to_string(),
    }
}

/// What was run: `25 inputs, 4096 members, 110592 runs`.
pub fn size_of(story: &Story<'_>) -> String {
    let counts = story.findings.counts;
    let mut words = format!(
        "{}, {}, {}",
        counted(story.study.inputs.len(), "input"),
        counted(counts.members as usize, "member"),
        counted(counts.rows as usize, "run")
    );
    if counts.failed > 0 {
        let left_out = counted(counts.left_out as usize, "member");
        words += &match counts.left_out {
            0 => format!("; {} failed and tell nothing", counts.failed),
            _ => format!("; {} failed, so {left_out} are left out", counts.failed),
        };
    }
    words
}

/// Between what a milestone lies.
pub fn range(story: &Story<'_>, found: &Found) -> String {
    let moments = &found.outputs.moments;
    if moments.count() == 0 {
        return "no run that did not fail".into();
    }
    if found.milestone.is_yes_or_no() {
        let day = story.study.ready_by;
        return format!("{} runs, by day {day}", of_100(moments.mean()));
    }
    let words = |of: f64| value(&found.milestone, of, story.study.last_day);
    if moments.least() == moments.most() {
        return format!("{} in every run", words(moments.least()));
    }
    let ends = format!(
        "from {} to {}",
        words(moments.least()),
        words(moments.most())
    );
    if found.outputs.beyond > 0 {
        return ends; // a mean of days some of which are not known is none
    }
    let mean = words(moments.mean());
    format!("mean {mean}, {ends}")
}

/// What is found of one milestone.
pub fn sentences(story: &Story<'_>, found: &Found) -> Vec<Sentence> {
    let mut all = Vec::new();
    all.extend(late(story, found).map(|words| ("late", words)));
    all.extend(carried(story, found).map(|words| ("few", words)));
    let Some(judged) = judged(found) else {
        let words = match found.share_beyond() == 1.0 {
            true => "not known: no run is ready within its days",
            false => "nothing moves it, or too few members were run",
        };
        all.push(("matter", words.into()));
        return all;
    };
    all.push(("matter", matter(story, found, &judged)));
    let names = |standing| named(story, &judged.all(standing));
    if let Some(names) = names(Standing::Bends) {
        all.push((
            "bend",
            format!("{names}: moved, but not one way, so ranks do not see it"),
        ));
    }
    if let Some(names) = names(Standing::Regular) {
        all.push((
            "regular",
            format!("{names}: the rank is clear, but the distance no more than chance makes of so few runs"),
        ));
    }
    if let Some(words) = together(story, &judged) {
        all.push(("together", words));
    }
    if let Some(names) = names(Standing::Ignorable) {
        all.push(("ignore", format!("within these spreads: {names}")));
    }
    if let Some(names) = names(Standing::Between) {
        let more = too_few_to_ignore(found, judged.leading).map_or(String::new(), |needed| {
            format!(" (it takes {needed} members to tell what may be ignored)")
        });
        all.push((
            "between",
            format!("little, or not known yet: {names}{more}"),
        ));
    }
    all.extend(choices(story, &judged).map(|words| ("choice", words)));
    all.extend(rough(found).map(|words| ("rough", words)));
    all.extend(sure(story, found, &judged).map(|words| ("sure", words)));
    all
}

/// Which of the inputs are choices, where a number leads that hangs on the order of their settings.
fn choices(story: &Story<'_>, judged: &Judged) -> Option<String> {
    let hangs_on_order = matches!(judged.leading, Kind::Rank | Kind::MuStar | Kind::Range);
    let choices: Vec<String> = judged
        .order
        .iter()
        .filter(|(factor, _)| takes_settings(story.study, *factor))
        .map(|(factor, _)| full_name(&story.findings.factors[*factor]))
        .collect();
    let (is, their) = match choices.len() {
        1 => ("is a choice", "its"),
        _ => ("are choices", "their"),
    };
    let what = match judged.leading {
        Kind::Rank => "ranks",
        Kind::MuStar => "effects",
        _ => "rises",
    };
    (hangs_on_order && !choices.is_empty()).then(|| {
        format!(
            "{} {is}: {their} {what} hang on the order in which the study lists the settings",
            list(&choices)
        )
    })
}

/// The inputs that matter with their numbers; where none does, the strongest.
fn matter(story: &Story<'_>, found: &Found, judged: &Judged) -> String {
    let matter = judged.all(Standing::Matters);
    let with_number = |&factor: &usize| {
        let number = told_in_full(found, judged.leading, factor);
        format!("{} {number}", full_name(&story.findings.factors[factor]))
    };
    let what = meaning(judged.leading);
    if matter.is_empty() {
        return format!(
            "none for sure; strongest {} ({what})",
            with_number(&judged.strongest())
        );
    }
    let names: Vec<String> = matter.iter().take(NAMED).map(with_number).collect();
    let more = match matter.len().saturating_sub(NAMED) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    let of = judged.order.len();
    format!(
        "{} of {of}: {}{more} ({what})",
        matter.len(),
        names.join(", ")
    )
}

/// What inputs do with others beyond what they do alone.
fn together(story: &Story<'_>, judged: &Judged) -> Option<String> {
    let name = |factor: usize| name(&story.findings.factors[factor]);
    if !judged.pairs.is_empty() {
        let pairs = judged.pairs.iter().take(TOGETHER);
        let words = pairs.map(|&(one, other, both)| {
            format!("{} with {} {}", name(one), name(other), share(both))
        });
        return Some(format!(
            "{} beyond each alone",
            list(&words.collect::<Vec<_>>())
        ));
    }
    let most = judged.together.iter().take(TOGETHER);
    let words: Vec<String> = most
        .map(|&(one, part)| format!("{} {}", name(one), share(part)))
        .collect();
    let tells = judged.leading == Kind::Total && !words.is_empty();
    tells.then(|| format!("{} with others, beyond what each does alone", list(&words)))
}

/// So many names, the rest counted; none of none.
fn named(story: &Story<'_>, factors: &[usize]) -> Option<String> {
    let names = factors
        .iter()
        .map(|&factor| full_name(&story.findings.factors[factor]));
    let shown: Vec<String> = names.take(LISTED).collect();
    let more = factors.len() - shown.len();
    match (factors.len(), more) {
        (0, _) => None,
        (_, 0) => Some(list(&shown)),
        _ => Some(format!("{} and {more} more", shown.join(", "))),
    }
}

/// What a study cannot say.
pub fn cannot_say(story: &Story<'_>) -> String {
    let beyond = match story.study.method {
        Method::Variance { .. } => "shares tell what makes these tanks differ, not what would help",
        Method::Trajectories { .. } => "effects are means over all of them",
        Method::OneAtATime => "what two inputs do together does not show",
        Method::Points | Method::Latin => "what goes with a result need not be its cause",
    };
    format!(
        "Holds within these spreads; what is not among the inputs stayed as in the central run; {beyond}."
    )
}
