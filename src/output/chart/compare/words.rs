//! What the chart of plans side by side says in its title, made from the pairs.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::versus::Versus;
use crate::output::chart::words::{list, number};
use crate::output::compare::paragraph::gained;

/// The plan that is ready first, by the means of the pairs, and the pair with the next one.
fn first<'a>(comparison: &'a Comparison<'_>) -> Option<(usize, &'a Versus)> {
    let places = 0..comparison.strategies.len();
    let next = |place: usize| {
        let pairs = comparison.pairs.iter().filter(move |pair| pair.of == place);
        pairs.min_by(|a, b| a.paired.mean_days.total_cmp(&b.paired.mean_days))
    };
    let nexts = places.filter_map(|place| Some((place, next(place)?)));
    nexts
        .rev()
        .max_by(|a, b| a.1.paired.mean_days.total_cmp(&b.1.paired.mean_days))
}

/// Titles, the longest first.
pub fn titles(comparison: &Comparison<'_>) -> Vec<String> {
    let Some((place, versus)) = first(comparison) else {
        return vec!["Plans side by side".to_string()];
    };
    let name = |place: usize| &comparison.strategies[place].key;
    let (own, next) = (name(place), name(versus.against));
    if versus.is_never() {
        let last_day = comparison.last_day;
        return vec![format!("By day {last_day} no tank is ready with any plan")];
    }
    if versus.is_same() {
        return vec![
            format!("With {own} no tank is ready sooner or later than with {next}"),
            "Of the first two no tank is ready sooner or later".to_string(),
        ];
    }
    if !versus.paired.is_clear() {
        return vec![
            format!("By the ready day {own} is not to be told from {next}"),
            "No plan is shown to be ready before all others".to_string(),
        ];
    }
    let days = number(versus.paired.mean_days, 1);
    vec![
        format!("{own} is ready first, on average {days} days before {next}"),
        format!("{own} is ready first, by {days} days"),
        format!("One plan is ready first, by {days} days"),
    ]
}

/// Sentences, the longest first.
pub fn sentences(comparison: &Comparison<'_>) -> Vec<String> {
    let Some((place, versus)) = first(comparison) else {
        return vec![String::new()];
    };
    let members = comparison.common.members;
    if versus.is_never() {
        return vec![format!(
            "Every plan was run on the same {members} plausible tanks."
        )];
    }
    let own = &comparison.strategies[place].key;
    let pairs = comparison.pairs.iter().filter(|pair| pair.of == place);
    let counts = pairs.map(|pair| {
        let other = &comparison.strategies[pair.against].key;
        format!("{other} in {:.0}", pair.of_100(pair.before))
    });
    let counts: Vec<String> = counts.collect();
    let head = format!("Tank by tank, on the same {members} plausible tanks,");
    let of_next = format!("before it in {:.0} of 100", versus.of_100(versus.before));
    let against_next = match versus.is_same() {
        true => format!("{head} it is held against the next one: ready {of_next}."),
        false => format!(
            "{head} it is ready {} than the next one: {of_next}.",
            gained(versus)
        ),
    };
    vec![
        format!("{head} {own} is ready before {} of 100.", list(&counts)),
        format!("{head} it is ready before {} of 100.", list(&counts)),
        against_next,
    ]
}
