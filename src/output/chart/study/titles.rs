//! What the charts of a study say in their titles, made from what was found.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::{Index, Kind};
use crate::analysis::study::findings::judged::{Judged, Standing, judged};
use crate::analysis::study::findings::sizes::DONE_BELOW;
use crate::output::chart::notes::Note;
use crate::output::chart::words::number;
use crate::output::study::Story;
use crate::output::study::leads::{carried_in_short, late};
use crate::output::study::sureness::{is_rough, widest};
use crate::output::study::verdict::cannot_say;
use crate::output::study::words::{amount, is_day, name, share, takes_settings};
use crate::output::text::words::capital;
use crate::output::text::words::counted;

/// What a ready day of a study is.
const WITHOUT_ANIMALS: &str =
    "the day from which limits hold without animals; what animals would add is not asked.";

/// The milestone as it stands in a sentence: `the ready day`.
pub fn the(found: &Found) -> String {
    format!("the {}", found.milestone.short)
}

/// The strongest input and what it does, the longest wording first; where none matters for sure, that.
pub fn strongest(story: &Story<'_>, found: &Found, judged: &Judged) -> Vec<String> {
    let (strongest, the) = (judged.strongest(), the(found));
    let factor = &story.findings.factors[strongest];
    let Some(index) = found.at(judged.leading, strongest) else {
        return vec![the];
    };
    let in_words = match factor.inputs {
        1 if factor.words.is_empty() => factor.name.clone(), // a path of a scenario has no article
        1 => format!("the {}", lower(&name(factor))),
        _ => format!("group {}", factor.name),
    };
    let is_sure = !judged.all(Standing::Matters).is_empty();
    let say = |who: &str| match judged.leading {
        _ if !is_sure => vec![format!("Nothing moves {the} for sure; most so far: {who}")],
        Kind::Total => explains(found, who, index),
        Kind::Rank if takes_settings(story.study, strongest) => {
            vec![hangs_most_on(found, who)]
        }
        Kind::Pawn => vec![hangs_most_on(found, who)],
        Kind::Rank => vec![format!(
            "The higher {who}, the {} {the}",
            way(found, index.value)
        )],
        leading => vec![moves(found, (leading, who), index)],
    };
    [say(&in_words), say(&factor.name)].concat()
}

/// `The ready day hangs most on the nitrite at half speed of nitrite oxidisers`.
fn hangs_most_on(found: &Found, who: &str) -> String {
    format!("{} hangs most on {who}", capital(&the(found)))
}

/// `The ready day moves most with …: by 12 days on average`.
fn moves(found: &Found, (leading, who): (Kind, &str), index: &Index) -> String {
    let by = amount(&found.milestone, index.value);
    let alone = match leading {
        Kind::MuStar => format!("{who}: by {by} on average"),
        _ => format!("{who} alone: by {by}"),
    };
    format!("{} moves most with {alone}", capital(&the(found)))
}

/// `31 % of the variance of the ready day comes from … alone, 35 % in all`.
fn explains(found: &Found, who: &str, total: &Index) -> Vec<String> {
    let alone = found
        .at(Kind::First, total.factor)
        .map_or(0.0, |first| first.value);
    if is_rough(alone, total.value) {
        return vec![hangs_most_on(found, who)]; // no share can be told yet
    }
    let (alone, part, the) = (share(alone), share(total.value), the(found));
    let short = format!("{alone} of the variance of {the} comes from {who}");
    match alone == part {
        true => vec![short],
        false => vec![format!("{short} alone, {part} in all"), short],
    }
}

/// With a small letter to go on with; names that are all capitals stay.
fn lower(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next();
    let next_is_small = letters.clone().next().is_some_and(char::is_lowercase);
    match first {
        Some(first) if next_is_small => first.to_lowercase().chain(letters).collect(),
        _ => words.to_string(),
    }
}

/// `earlier` or `later`, `lower` or `higher`, of yes or no `likelier` or `less likely`.
pub fn way(found: &Found, rank: f64) -> &'static str {
    if found.milestone.is_yes_or_no() {
        return if rank > 0.0 {
            "likelier"
        } else {
            "less likely"
        };
    }
    match (is_day(&found.milestone), rank > 0.0) {
        (true, true) => "later",
        (true, false) => "earlier",
        (false, true) => "higher",
        (false, false) => "lower",
    }
}

/// How many matter, how many do not, how many runs; the longest wording first.
pub fn sentences(story: &Story<'_>, found: &Found, judged: &Judged) -> Vec<String> {
    let [matter, ignorable] =
        [Standing::Matters, Standing::Ignorable].map(|such| judged.all(such).len());
    let of = judged.order.len();
    let counts = story.findings.counts;
    let runs = counted(counts.rows as usize, "run");
    let base =
        format!("{matter} of {of} matter, {ignorable} may be ignored within their spreads; {runs}");
    let mut all = Vec::new();
    if let Some(sure) = sure(found, judged) {
        all.push(format!("{base}. {sure}."));
    }
    all.push(format!("{base}."));
    all
}

fn sure(found: &Found, judged: &Judged) -> Option<String> {
    let widest = widest(found, judged)?;
    let words = format!("Widest interval {}", number(widest, 3));
    Some(match widest < DONE_BELOW {
        true => format!("{words}: below {DONE_BELOW}, done"),
        false => format!("{words}: not below {DONE_BELOW} yet"),
    })
}

/// What the picture cannot say, for its foot.
pub fn limits(story: &Story<'_>, found: &Found) -> Vec<Note> {
    let mut notes = Vec::new();
    if found.milestone.is_of_ripening() {
        notes.push(Note::new("Ready", WITHOUT_ANIMALS.into()));
    }
    let late = late(story, found).map(|words| format!("{words}."));
    notes.extend(late.map(|words| Note::new("Late", words)));
    let few = carried_in_short(story, found).map(|words| format!("{words}."));
    notes.extend(few.map(|words| Note::new("Few", words)));
    notes.push(Note::new("Limits", cannot_say(story)));
    notes
}

/// What is judged of the milestone that is told first.
pub fn of_main<'a>(story: &Story<'a>) -> Option<(&'a Found, Judged)> {
    let main = story.main()?;
    Some((main, judged(main)?))
}
