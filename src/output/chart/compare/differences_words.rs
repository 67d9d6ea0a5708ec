//! What the chart of differences says in its title, made from the pairs.

use crate::analysis::compare::Comparison;
use crate::analysis::compare::versus::Versus;
use crate::output::chart::words::number;
use crate::output::compare::paragraph::gained;

/// The other plan that is clearly ready soonest or latest against the first one, whichever is further off.
fn clearest<'a>(comparison: &'a Comparison<'_>) -> Option<&'a Versus> {
    let pairs = comparison.pairs.iter();
    let against_first = pairs.filter(|pair| pair.against == 0 && pair.paired.is_clear());
    let moved = against_first.filter(|pair| !pair.is_same());
    moved.max_by(|a, b| {
        let size = |pair: &Versus| pair.paired.mean_days.abs();
        size(a).total_cmp(&size(b))
    })
}

/// Titles, the longest first.
pub fn titles(comparison: &Comparison<'_>) -> Vec<String> {
    let first = &comparison.strategies[0].key;
    match clearest(comparison) {
        None => vec![
            format!("Against {first} no other plan is shown to move the ready day"),
            "No other plan is shown to move the ready day".to_string(),
        ],
        Some(versus) => {
            let own = &comparison.strategies[versus.of].key;
            let days = gained(versus);
            vec![
                format!("{own} is ready {days} than {first}"),
                format!("{own} is ready {days}"),
                format!("The ready day moves: {days}"),
            ]
        }
    }
}

/// Sentences, the longest first.
pub fn sentences(comparison: &Comparison<'_>) -> Vec<String> {
    let first = &comparison.strategies[0].key;
    let members = number(comparison.common.members as f64, 0);
    let last_day = comparison.last_day;
    let never = format!("a tank not ready by day {last_day} counts as ready on it");
    vec![
        format!(
            "Each plan less {first}, tank by tank, on the same {members} plausible tanks; {never}."
        ),
        format!(
            "Each plan less the first one, tank by tank, on the same {members} tanks; {never}."
        ),
    ]
}
