//! Plans side by side: one screen.

mod pairs;
mod table;

use crate::analysis::case::Case;
use crate::analysis::compare::Comparison;
use crate::analysis::compare::differences::weightiest_first;
use crate::output::compare::paragraph::{paragraph, reference};

use super::words::list;
use super::{Length, Page, Tone};
use pairs::pairs;
use table::table;
pub(in crate::output) use table::{marks_few, told};

/// Differences of the files that are told one by one.
const DIFFERENCES: usize = 4;
/// Signs of a line; what is longer is cut, and whole in its table.
const LINE: usize = 86;
/// Reasons are told until they are so long, the first one always; the whole paragraph stands in the table.
const PARAGRAPH: usize = 260;
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
        if let Some(words) = paragraph(comparison, place) {
            let label = if place == 0 { "Why" } else { "" };
            let words = match length {
                Length::Screen => opening(&words),
                Length::Full => words,
            };
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

/// The first sentences of a paragraph after that of the days, which the pairs have told.
fn opening(paragraph: &str) -> String {
    let (days, reasons) = paragraph.split_once(". ").unwrap_or((paragraph, ""));
    let reasons = if reasons.is_empty() { days } else { reasons };
    let mut told = String::new();
    for sentence in reasons.split_inclusive(". ") {
        if !told.is_empty() && told.len() + sentence.len() > PARAGRAPH {
            break;
        }
        told.push_str(sentence);
    }
    told.trim_end().to_string()
}

/// One line, cut where it is too long.
fn cut(words: &str) -> String {
    match words.chars().count() > LINE {
        true => words.chars().take(LINE - 1).chain(['…']).collect(),
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
    let is_full = length == Length::Full;
    let most = if is_full { all.len() } else { DIFFERENCES };
    if all.is_empty() {
        page.block("Differ", Tone::Plain, "in nothing but their names");
        return;
    }
    for (place, one) in all.iter().take(most).enumerate() {
        let label = if place == 0 { "Differ" } else { "" };
        let values = one
            .values
            .iter()
            .map(|value| value.as_deref().unwrap_or("–"));
        let values = values.collect::<Vec<_>>().join(" | ");
        let words = format!("{}: {values}", one.path);
        page.block(
            label,
            Tone::Plain,
            if is_full { words } else { cut(&words) },
        );
    }
    if all.len() > most {
        let more = all.len() - most;
        page.line(
            Tone::Faint,
            format!("and {more} more: --full, differences.csv"),
        );
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
