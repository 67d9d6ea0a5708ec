//! Who is ready before whom, tank by tank.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::versus::Versus;
use crate::output::compare::paragraph::gained;
use crate::output::text::words::list;
use crate::output::text::{Page, Tone};

use super::{BARE, NAMES, letter};

/// Up to so many plans every pair is told with its ties.
const MOST_WITH_TIES: usize = 3;

/// Every pair, and the days gained or lost against the first plan.
pub fn pairs(page: &mut Page, comparison: &Comparison<'_>) {
    if comparison.strategies.len() <= MOST_WITH_TIES {
        let once = comparison
            .pairs
            .iter()
            .filter(|pair| pair.of < pair.against);
        once.for_each(|pair| in_words(page, pair));
    } else {
        matrix(page, comparison);
    }
    let to_first = comparison.pairs.iter().filter(|pair| pair.against == 0);
    let words = to_first.map(|pair| match pair.is_same() {
        true => format!("{} the same in every tank", letter(pair.of)),
        false => format!("{} {}", letter(pair.of), gained(pair)),
    });
    let words = list(&words.collect::<Vec<_>>());
    page.block(
        "Than A",
        Tone::Strong,
        format!("{words} (mean of the pairs ± standard error)"),
    );
}

/// One line per two plans.
fn in_words(page: &mut Page, pair: &Versus) {
    let is_first = (pair.of, pair.against) == (0, 1);
    let (own, other) = (letter(pair.of), letter(pair.against));
    let of_100 = |count: usize| format!("{:.0}", pair.of_100(count));
    let words = format!(
        "{own} ready before {other} in {} of 100 tanks, {other} before {own} in {}, same day in {}, neither in {}",
        of_100(pair.before),
        of_100(pair.after),
        of_100(pair.same_day),
        of_100(pair.neither)
    );
    page.block(if is_first { "Pairs" } else { "" }, Tone::Plain, words);
}

/// In how many of 100 tanks the plan of the row is ready before that of the column.
fn matrix(page: &mut Page, comparison: &Comparison<'_>) {
    let places = 0..comparison.strategies.len();
    let heads = places
        .clone()
        .map(|place| format!("{:>BARE$}", letter(place)));
    let heads: String = heads.collect();
    let head = format!("{:NAMES$}{heads}", "of 100, ready before");
    page.block("Pairs", Tone::Strong, head);
    for of in places.clone() {
        let cell = |against: usize| match comparison.versus(of, against) {
            Some(pair) => format!("{:>BARE$.0}", pair.of_100(pair.before)),
            None => format!("{:>BARE$}", "·"),
        };
        let cells: String = places.clone().map(cell).collect();
        page.line(Tone::Plain, format!("{:NAMES$}{cells}", letter(of)));
    }
    page.line(
        Tone::Faint,
        "the others on the same day, or neither way: pairs.csv",
    );
}
