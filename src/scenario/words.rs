//! Small turns of phrase that messages share.

use crate::base::shown::grouped;

/// `a`, `a or b`, `a, b or c`.
pub fn list_or(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}

/// The known word that is spelled most like a given one, if any is near.
pub fn closest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let near = (word.chars().count() / 3).max(2);
    known
        .into_iter()
        .map(|candidate| (strsim::damerau_levenshtein(word, candidate), candidate))
        .filter(|(distance, candidate)| *distance <= near && *distance < candidate.chars().count())
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}

/// `1 day`, `3 days`.
pub fn counted(count: usize, one: &str) -> String {
    match count {
        1 => format!("1 {one}"),
        many => format!("{} {one}s", grouped(many)),
    }
}
