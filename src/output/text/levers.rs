//! What the levers do: one screen.

use crate::analysis::case::Case;
use crate::analysis::levers::paired::{Moved, Paired};
use crate::analysis::levers::price::Price;
use crate::analysis::levers::{Levers, Pulled, best};
use crate::output::lever_words::{night_air, price, seeding};
use crate::output::waiting::waited_words;

use super::words::list;
use super::{Page, Tone, forecast, title};

/// Widths of the columns: words, days and their error, range, then litres, gas, worst night, ready.
const WORDS: usize = 38;
const DAYS: usize = 12;
const RANGE: usize = 12;
const PRICE: [usize; 4] = [7, 6, 6, 6];
/// Levers told in words below the table.
const TOLD: usize = 3;
/// A day that rounds to none.
const NONE: &str = "0";
/// What stands before days that may be chance.
const UNCLEAR: &str = "~";

/// The whole page.
pub fn page(case: &Case, levers: &Levers) -> Page {
    let mut page = Page::default();
    title(&mut page, case);
    page.gap();
    forecast::when_and_why(&mut page, &levers.curve, case.filled_on);
    page.gap();
    table(&mut page, case, levers);
    page.gap();
    for (at, pulled) in best(&levers.pulled).take(TOLD).enumerate() {
        let label = if at == 0 { "Best" } else { "" };
        page.block(label, Tone::Plain, in_words(pulled));
    }
    page.block(
        "Seeding",
        Tone::Plain,
        seeding(case, levers.last_day_to_seed),
    );
    if let Some(air) = &levers.shortest_air {
        page.block("Night air", Tone::Plain, night_air(air, case));
    }
    page.line(
        Tone::Faint,
        "Each lever was pulled alone; two together are not the sum of both: write them into the file and run it.",
    );
    page.gap();
    page
}

fn table(page: &mut Page, case: &Case, levers: &Levers) {
    let (members, last_day) = (levers.trying.members, case.input.last_day);
    page.block(
        "Levers",
        Tone::Plain,
        format!("each alone, on the same {members} plausible tanks like yours; day {last_day} counted as the latest"),
    );
    let heads = ["litres", "gas g", "O2", "ready"].map(String::from);
    page.line(Tone::Faint, columns("", "days sooner", "10 to 90", heads));
    let plan = price(&levers.plan, None);
    page.line(Tone::Strong, columns("the plan as written", "", "", plan));
    for pulled in levers
        .pulled
        .iter()
        .filter(|pulled| pulled.does_something())
    {
        page.line(Tone::Plain, row(pulled, &levers.plan));
    }
    let nothing = levers
        .pulled
        .iter()
        .filter(|pulled| !pulled.does_something());
    let nothing: Vec<&str> = nothing.map(|pulled| pulled.words.as_str()).collect();
    if !nothing.is_empty() {
        let words = format!(
            "does nothing here (under half a day): {}",
            nothing.join("; ")
        );
        page.line(Tone::Faint, words);
    }
    page.line(
        Tone::Faint,
        "days: mean ± standard error, ~ where that may be chance; 10 to 90: of 100 tanks, or how many of 100 move at all where both are 0; O2: lowest of the run, mg/L, half of the tanks lower; ready: of 100 by the last day; · as in the plan",
    );
}

fn row(pulled: &Pulled, plan: &Price) -> String {
    let paired = &pulled.paired;
    let [low, high] = paired.range_days;
    let unclear = if paired.is_clear() { "" } else { UNCLEAR };
    let days = format!(
        "{unclear}{} ± {:.1}",
        signed(paired.mean_days, 1),
        paired.standard_error_days
    );
    let range = match [signed(low, 0), signed(high, 0)] {
        [low, high] if low == NONE && high == NONE => few_move(paired),
        [low, high] => format!("{low} to {high}"),
    };
    columns(
        &pulled.words,
        &days,
        &range,
        price(&pulled.price, Some(plan)),
    )
}

/// Where most pairs do not move, how many do: a few tanks then make the mean.
fn few_move(paired: &Paired) -> String {
    let of_100 = 100.0 * paired.changed as f64 / paired.pairs.max(1) as f64;
    format!("{of_100:.0} move")
}

/// A number with so many places and a real minus sign, never a negative nothing.
fn signed(value: f64, places: usize) -> String {
    let size = format!("{:.places$}", value.abs());
    let is_zero = size.chars().all(|c| matches!(c, '0' | '.'));
    match value < 0.0 && !is_zero {
        true => format!("−{size}"),
        false => size,
    }
}

fn columns(words: &str, days: &str, range: &str, price: [String; 4]) -> String {
    let price = price.iter().zip(PRICE);
    let price: String = price
        .map(|(cell, width)| format!("{cell:>width$}"))
        .collect();
    format!("{words:WORDS$}{days:>DAYS$}{range:>RANGE$}{price}")
}

fn in_words(pulled: &Pulled) -> String {
    let paired = &pulled.paired;
    let moved = paired.moved.map_or(String::new(), moved_words);
    format!(
        "{}: {} of {} tanks get ready within the run only with it, {} only without, {} neither way{moved}",
        pulled.words, paired.only_with, paired.pairs, paired.only_without, paired.neither
    )
}

/// What comes right last in more tanks or in fewer; nothing where the printed numbers are the same.
fn moved_words(moved: Moved) -> String {
    let [before, after] =
        [moved.of_100_before, moved.of_100_after].map(|of_100| format!("{of_100:.0}"));
    match before == after {
        true => String::new(),
        false => format!(
            "; {} is last in {after} of 100 instead of {before}",
            waited_words(moved.waiting)
        ),
    }
}

/// The best levers in a few words, with the days they gain.
pub fn named(pulled: &[Pulled]) -> String {
    let words = best(pulled).take(TOLD);
    let words =
        words.map(|pulled| format!("{} ({:.1} days)", pulled.words, pulled.paired.mean_days));
    list(&words.collect::<Vec<_>>())
}
