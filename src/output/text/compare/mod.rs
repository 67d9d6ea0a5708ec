//! Plans side by side: one screen.

mod pairs;
mod table;

use crate::analysis::case::Case;
use crate::analysis::compare::Comparison;
use crate::analysis::compare::differences::{Difference, by_section, weightiest_first};
use crate::output::compare::paragraph::{paragraph, reasons, reference};

use super::words::list;
use super::{Length, Page, Tone};
use pairs::pairs;
use table::table;
pub(in crate::output) use table::{marks_few, named, told};

/// Differences of the files that are told one by one; of more, one of each section.
const DIFFERENCES: usize = 6;
/// Signs of a value; what is longer is cut, and whole in its table.
const VALUE: usize = 40;
/// Plans of which all reasons are told; of more, as many as come to so many signs, the first one always. The whole
/// paragraph stands in the table.
const PLANS: usize = 3;
const REASONS: usize = 260;
/// Width of the first column of a table.
const NAMES: usize = 24;
/// Width of a plan's column where there are many.
const BARE: usize = 6;

/// The whole page, but for where the files are; on a screen the figures, reasons and differences that decide, in full
/// all of them.
pub fn page(comparison: &Comparison<'_>, length: Length) -> Page {
    let mut page = Page::default();
    plans(&mut page, comparison);
    page.gap();
    table(&mut page, comparison, length);
    page.gap();
    pairs(&mut page, comparison);
    page.gap();
    for (place, strategy) in comparison.strategies.iter().enumerate() {
        let words = match length {
            Length::Screen => reasons(comparison, place).map(|words| opening(words, comparison)),
            Length::Full => paragraph(comparison, place),
        };
        if let Some(words) = words {
            let label = if place == 0 { "Why" } else { "" };
            let against = reference(comparison, place)
                .map_or(String::new(), |other| format!(" against {}", letter(other)));
            let words = format!("{} {}{against}: {words}", letter(place), strategy.key);
            page.block(label, Tone::Plain, words);
        }
    }
    page.gap();
    differences(&mut page, comparison, length);
    without_prices(&mut page, comparison);
    page.gap();
    page
}

/// All reasons of few plans, the first ones of many.
fn opening(reasons: String, comparison: &Comparison<'_>) -> String {
    if comparison.strategies.len() <= PLANS {
        return reasons;
    }
    let mut told = String::new();
    for sentence in reasons.split_inclusive(". ") {
        if !told.is_empty() && told.len() + sentence.len() > REASONS {
            break;
        }
        told.push_str(sentence);
    }
    told.trim_end().to_string()
}

/// A value, cut where it is too long.
fn cut(words: &str) -> String {
    match words.chars().count() > VALUE {
        true => words.chars().take(VALUE - 1).chain(['…']).collect(),
        false => words.to_string(),
    }
}

/// The letter a plan has on the screen.
fn letter(place: usize) -> char {
    char::from(b'A' + place as u8)
}

fn plans(page: &mut Page, comparison: &Comparison<'_>) {
    page.block(
        "firstfill",
        Tone::Strong,
        format!(
            "{} plans on the same {} plausible tanks, to day {}",
            comparison.strategies.len(),
            comparison.common.members,
            comparison.last_day
        ),
    );
    for (place, strategy) in comparison.strategies.iter().enumerate() {
        let Case { name, .. } = strategy.case;
        let words = match *name == strategy.key {
            true => strategy.key.clone(),
            false => format!("{}: {name}", strategy.key),
        };
        page.line(Tone::Plain, format!("{} {words}", letter(place)));
    }
}

fn differences(page: &mut Page, comparison: &Comparison<'_>, length: Length) {
    let all = weightiest_first(&comparison.differences);
    if all.is_empty() {
        page.block("Differ", Tone::Plain, "in nothing but their names");
    } else if length == Length::Full || all.len() <= DIFFERENCES {
        for (place, one) in all.iter().enumerate() {
            let label = if place == 0 { "Differ" } else { "" };
            page.block(label, Tone::Plain, from_to(one, ":"));
        }
    } else {
        let sections = by_section(&comparison.differences);
        let each = (DIFFERENCES / sections.len()).max(1);
        let has_values = comparison.strategies.len() <= PLANS;
        let told = sections.iter().map(|all| of_section(all, each, has_values));
        let told: Vec<String> = told.collect();
        page.block("Differ", Tone::Plain, told.join("; "));
        let count = all.len();
        page.line(Tone::Faint, format!("all {count}: --full, differences.csv"));
    }
}

/// A path, and its value in every file.
fn from_to(one: &Difference, after_path: &str) -> String {
    let values = one.values.iter();
    let values = values.map(|value| value.as_deref().map_or("–".to_string(), cut));
    let values = values.collect::<Vec<_>>().join(" | ");
    format!("{}{after_path} {values}", one.path)
}

/// The weightiest differences of a section, with their values where there is room, and how many more there are.
fn of_section(all: &[&Difference], each: usize, has_values: bool) -> String {
    let told = all.iter().take(each).map(|one| match has_values {
        true => from_to(one, ""),
        false => one.path.clone(),
    });
    let words = told.collect::<Vec<_>>().join("; ");
    match all.len().saturating_sub(each) {
        0 => words,
        more => format!("{words} (and {more} more)"),
    }
}

/// What a cost leaves out, where there is one.
pub(in crate::output) fn without_prices(page: &mut Page, comparison: &Comparison<'_>) {
    let priced = comparison.strategies.iter().enumerate();
    for (place, strategy) in priced {
        let Some(told) = strategy.told().next() else {
            continue;
        };
        let missing = strategy
            .case
            .prices
            .without_price(&strategy.taken(&told.figures));
        if !missing.is_empty() {
            let words = format!(
                "the cost of {} leaves out {}: no price in its file",
                letter(place),
                list(&missing)
            );
            page.block("Cost", Tone::Warn, words);
        }
    }
}
