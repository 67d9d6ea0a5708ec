//! What came of a comparison: the verdict, the plans, the figures that tell them apart, pair by pair, and why.

use maud::{Markup, html};

use crate::analysis::compare::Comparison;
use crate::analysis::compare::lines::{Line, Standing};
use crate::analysis::compare::strategy::Strategy;
use crate::analysis::compare::value::Value;
use crate::analysis::compare::versus::Versus;
use crate::output::chart::compare::words::{sentences, titles};
use crate::output::compare::paragraph::{gained, paragraph};
use crate::output::text::compare::{marks_few, named, told, without_prices};
use crate::output::text::{Page, words::list};

use super::compare::cell;
use super::report::words;
use super::table::{NOTHING, Words};

/// The figure that opens the table of plans.
const HALF_READY: &str = "ready_50_of_100_day";

/// The whole part.
pub fn result(comparison: &Comparison<'_>) -> Markup {
    let longest = |mut all: Vec<String>| all.swap_remove(0);
    let mut priced = Page::default();
    without_prices(&mut priced, comparison);
    html! {
        p class="headline" { (longest(titles(comparison))) "." }
        p { (longest(sentences(comparison))) }
        h3 { "The plans" }
        (plans(comparison).markup(None))
        h3 { "Where they are told apart" }
        (apart(comparison).markup(None))
        (words(&priced))
        h3 { "Two by two" }
        (pairs(comparison).markup(None))
        h3 { "Why" }
        @for (place, plan) in comparison.strategies.iter().enumerate() {
            @if let Some(why) = paragraph(comparison, place) { p { strong { (plan.key) ". " } (why) } }
        }
    }
}

/// What heads a table with a column per plan.
pub fn heads(comparison: &Comparison<'_>, first: &str) -> Vec<String> {
    let plans = comparison.strategies.iter().map(|plan| plan.key.clone());
    std::iter::once(first.to_string()).chain(plans).collect()
}

/// A row per plan: its name, when half of the tanks are ready, and how that stands to the first plan.
fn plans(comparison: &Comparison<'_>) -> Words {
    let half = comparison.lines.iter().find(|line| line.name == HALF_READY);
    let row = |(place, plan): (usize, &Strategy<'_>)| {
        let day = half.map(|line| cell(line, &line.values[place], comparison.last_day));
        vec![
            plan.key.clone(),
            plan.case.name.clone(),
            day.unwrap_or_else(|| NOTHING.into()),
            comparison
                .versus(place, 0)
                .map_or_else(|| NOTHING.into(), against),
        ]
    };
    let first = &comparison.strategies[0].key;
    Words {
        caption: "Days against another plan are means over the same tanks, ± standard error".into(),
        heads: vec![
            "Plan".into(),
            "Its name".into(),
            "50 of 100 ready by day".into(),
            format!("Against {first}"),
        ],
        rows: comparison.strategies.iter().enumerate().map(row).collect(),
    }
}

/// Days gained or lost, and whether that may be chance.
fn against(pair: &Versus) -> String {
    if pair.is_never() {
        return "neither is ready".into();
    }
    if pair.is_same() {
        return "no tank sooner or later".into();
    }
    match pair.paired.is_clear() {
        true => gained(pair),
        false => format!("{}, may be chance", gained(pair)),
    }
}

/// The figures in which the plans are told apart, with the best and the worst.
fn apart(comparison: &Comparison<'_>) -> Words {
    let row = |line: &Line| {
        let cells = line.values.iter().enumerate();
        let cells = cells.map(|(place, value)| middle(line, place, value, comparison.last_day));
        std::iter::once(named(line)).chain(cells).collect()
    };
    Words {
        caption:
            "Middle of the tanks; best and worst only where the difference is more than chance"
                .into(),
        heads: heads(comparison, "Figure"),
        rows: told(comparison).into_iter().map(row).collect(),
    }
}

fn middle(line: &Line, place: usize, value: &Value, last_day: u32) -> String {
    let alone = match value {
        Value::Band([_, middle, _]) => &Value::One(*middle),
        other => other,
    };
    let words = cell(line, alone, last_day);
    let standing = line.standing(place);
    match standing {
        Standing::Best if marks_few(line, standing) => format!("{words}, best"),
        Standing::Worst if marks_few(line, standing) => format!("{words}, worst"),
        _ => words,
    }
}

/// Which of two plans is ready first, in how many of 100 tanks.
fn pairs(comparison: &Comparison<'_>) -> Words {
    let key = |place: usize| comparison.strategies[place].key.clone();
    let once = comparison.pairs.iter();
    let once = once.filter(|pair| pair.of < pair.against);
    let row = |pair: &Versus| {
        let counts = [pair.before, pair.after, pair.same_day, pair.neither];
        let counts = counts.map(|count| format!("{:.0}", pair.of_100(count)));
        let names = list(&[key(pair.of), key(pair.against)]);
        std::iter::once(names).chain(counts).collect()
    };
    let heads = [
        "Two plans",
        "The first sooner",
        "The second sooner",
        "The same day",
        "Neither",
    ];
    Words {
        caption: format!(
            "Of 100 tanks ({} were run): with which plan each is ready sooner, or by day {} with neither",
            comparison.common.members, comparison.last_day
        ),
        heads: heads.map(String::from).to_vec(),
        rows: once.map(row).collect(),
    }
}
