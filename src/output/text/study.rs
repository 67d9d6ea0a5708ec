//! A study on one screen: what was run, the strongest inputs of the first milestone, the verdict, the others in a
//! line each.

use crate::analysis::study::findings::Found;
use crate::analysis::study::findings::index::Kind;
use crate::analysis::study::findings::judged::{Standing, judged};
use crate::output::chart::words::number;
use crate::output::study::Story;
use crate::output::study::leads::few;
use crate::output::study::ready::in_common;
use crate::output::study::verdict::{cannot_say, range, sentences, size_of, title};
use crate::output::study::words::{amount, bare, meaning, name, share, told_in_full};
use crate::output::text::words::capital;

use super::words::counted;
use super::{Page, Tone};

/// Most inputs in the list, and most other milestones.
const LISTED: usize = 6;
const OTHERS: usize = 7;
/// Inputs named of another milestone.
const NAMED: usize = 2;
/// Width of names, which go on below where they are longer, and of numbers.
const NAME: usize = 46;
const NUMBER: usize = 8;

/// The whole page, but for where the files are.
pub fn page(story: &Story<'_>) -> Page {
    let mut page = Page::default();
    page.block("firstfill", Tone::Strong, story.name);
    page.line(Tone::Plain, size_of(story));
    page.gap();
    if let Some(main) = story.main() {
        strongest(&mut page, story, main);
        page.gap();
        others(&mut page, story);
        page.gap();
        verdict(&mut page, story, main);
    }
    page.gap();
    page
}

/// The strongest inputs of a milestone, with their numbers.
fn strongest(page: &mut Page, story: &Story<'_>, found: &Found) {
    let title = format!("{}; {}", title(found), range(story, found));
    page.block("Milestone", Tone::Strong, title);
    let Some(judged) = judged(found) else {
        return;
    };
    page.line(Tone::Faint, heads(judged.leading));
    for &(factor, _) in judged.order.iter().take(LISTED) {
        let words = in_lines(&name(&story.findings.factors[factor]), NAME - 2);
        let cells = cells(found, judged.leading, factor);
        page.line(Tone::Plain, format!("{:NAME$}{cells}", words[0]));
        for more in &words[1..] {
            page.line(Tone::Plain, format!("  {more}"));
        }
    }
    if judged.order.len() > LISTED {
        let rest = counted(judged.order.len() - LISTED, "other");
        page.line(Tone::Faint, format!("{rest} in indices.csv"));
    }
}

/// A text in lines of at most so many signs, broken between words; a longer word has a line of its own.
fn in_lines(text: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in text.split(' ') {
        let last = lines.len() - 1;
        let line = &mut lines[last];
        match line.is_empty() {
            true => line.push_str(word),
            false if line.chars().count() + 1 + word.chars().count() <= width => {
                *line += &format!(" {word}");
            }
            false => lines.push(word.to_string()),
        }
    }
    lines
}

/// What the columns are.
fn heads(leading: Kind) -> String {
    let columns = match leading {
        Kind::Total => ["alone", "in all", "95 of 100 times"],
        Kind::Rank => ["distance", "rank", "rank, 95 of 100 times"],
        Kind::Pawn => ["chance", "distance", ""],
        Kind::MuStar => ["spread", "effect", "95 of 100 times"],
        _ => ["rise", "range", "from and to"],
    };
    let [first, second, third] = columns;
    format!("{:NAME$}{first:>NUMBER$}{second:>NUMBER$}  {third}", "")
}

fn cells(found: &Found, leading: Kind, factor: usize) -> String {
    let beside = match leading {
        Kind::Total => Kind::First,
        Kind::Rank => Kind::Pawn,
        Kind::Pawn => Kind::PawnByChance,
        Kind::MuStar => Kind::Sigma,
        _ => Kind::Rise,
    };
    let cell = |kind| {
        found
            .at(kind, factor)
            .map(|index| bare(found, index))
            .unwrap_or_else(|| "–".into())
    };
    let (first, second) = (cell(beside), cell(leading));
    let ends = found.at(leading, factor).and_then(|index| index.interval);
    let ends = ends.map_or(String::new(), |ends| between(found, leading, ends));
    format!("{first:>NUMBER$}{second:>NUMBER$}  {ends}")
}

fn between(found: &Found, kind: Kind, [low, high]: [f64; 2]) -> String {
    match kind {
        Kind::Total => format!("{} to {}", share(low), share(high)),
        Kind::Rank => format!("{} to {}", number(low, 2), number(high, 2)),
        _ => format!(
            "{} to {}",
            amount(&found.milestone, low),
            amount(&found.milestone, high)
        ),
    }
}

/// The verdict on the first milestone, and what it cannot say.
fn verdict(page: &mut Page, story: &Story<'_>, found: &Found) {
    for (label, words) in sentences(story, found) {
        let tone = match label {
            "matter" => Tone::Strong,
            "late" if found.is_late() => Tone::Warn,
            "few" => Tone::Warn,
            _ => Tone::Plain,
        };
        page.block(&capital(label), tone, words);
    }
    let tells_of_ready = found.milestone.is_of_ripening();
    if let Some(words) = in_common(story).filter(|_| tells_of_ready) {
        page.block("In common", Tone::Plain, capital(&words));
    }
    page.block("But", Tone::Plain, cannot_say(story));
}

/// What matters most for the other milestones, a line each.
fn others(page: &mut Page, story: &Story<'_>) {
    let others: Vec<&Found> = story.findings.found.iter().skip(1).collect();
    let mut last = story.main().and_then(judged_kind);
    for (place, found) in others.iter().take(OTHERS).enumerate() {
        let label = if place == 0 { "Others" } else { "" };
        let kind = judged_kind(found);
        let words = in_short(story, found, kind.filter(|_| kind != last));
        let milestone = found.milestone.short;
        page.block(label, Tone::Plain, format!("{milestone}: {words}"));
        last = kind.or(last);
    }
    if others.len() > OTHERS {
        let rest = counted(others.len() - OTHERS, "milestone");
        page.line(Tone::Faint, format!("{rest} more in verdict.txt"));
    }
}

/// `growth of oxidisers 41 %, spread of films 12 %; 14 of 25 may be ignored (share of …)`; what the numbers are
/// is told where it was not just told of the milestone before.
fn in_short(story: &Story<'_>, found: &Found, kind: Option<Kind>) -> String {
    let Some(judged) = judged(found) else {
        return "nothing moves it".into();
    };
    let with_number = |&(factor, _): &(usize, Standing)| {
        let number = told_in_full(found, judged.leading, factor);
        format!("{} {number}", story.findings.factors[factor].name)
    };
    let strongest: Vec<String> = judged.order.iter().take(NAMED).map(with_number).collect();
    let ignorable = judged.all(Standing::Ignorable).len();
    let kind = kind.map(|kind| meaning(kind).to_string());
    let what: Vec<String> = kind.into_iter().chain(few(found)).collect();
    let what = match what.is_empty() {
        true => String::new(),
        false => format!(" ({})", what.join("; ")),
    };
    let of = judged.order.len();
    format!(
        "{}{what}; {ignorable} of {of} may be ignored",
        strongest.join(", ")
    )
}

fn judged_kind(found: &Found) -> Option<Kind> {
    judged(found).map(|judged| judged.leading)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_name_is_broken_between_words_and_none_of_it_is_lost() {
        let name = "nitrite at which nitrite oxidisers run at half their speed";
        let lines = in_lines(name, 44);
        assert_eq!(
            lines,
            [
                "nitrite at which nitrite oxidisers run at",
                "half their speed"
            ]
        );
        assert_eq!(
            in_lines("a-word-longer-than-ten then", 10),
            ["a-word-longer-than-ten", "then"]
        );
        assert_eq!(in_lines("short", 10), ["short"]);
    }
}
