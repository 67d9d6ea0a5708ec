//! The milestones somebody may have meant by a name that is none: one spelled alike, or those that share its words.

use crate::analysis::study::milestone;
use crate::scenario::words::closest;

/// Most names that are offered.
const OFFERED: usize = 3;
/// Words of units, which say nothing of what is meant.
const UNITS: [&str; 4] = ["mg", "n", "per", "l"];

/// Names of the milestones that come nearest, the nearest first.
pub fn near(name: &str) -> Vec<String> {
    if let Some(near) = closest(name, milestone::all().map(|one| one.name)) {
        return vec![near.to_string()];
    }
    let asked = words(name);
    let mut shared: Vec<(usize, usize, &str)> = milestone::all()
        .map(|one| {
            let own = words(&format!("{} {}", one.name, one.short));
            let met = asked.iter().filter(|word| own.contains(word)).count();
            (met, own.len(), one.name)
        })
        .collect();
    let most = shared.iter().map(|(met, ..)| *met).max().unwrap_or(0);
    shared.retain(|(met, ..)| *met == most && most > 0);
    shared.sort_by_key(|(_, others, _)| *others);
    let names = shared.into_iter().take(OFFERED);
    names.map(|(.., name)| name.to_string()).collect()
}

/// The words of a name, each once, without those of units.
fn words(name: &str) -> Vec<String> {
    let mut words: Vec<String> = (name.split(|c: char| !c.is_alphanumeric()))
        .map(str::to_lowercase)
        .filter(|word| !word.is_empty() && !UNITS.contains(&word.as_str()))
        .collect();
    words.sort();
    words.dedup();
    words
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_milestone_is_found_by_its_spelling_or_by_its_words() {
        assert_eq!(near("ready_dya"), ["ready_day"]);
        assert_eq!(near("ammonia peak")[0], "tan_peak_mg_n_per_l");
        assert_eq!(near("tan")[0], "tan_peak_mg_n_per_l");
        assert!(near("ammonia").iter().any(|name| name.starts_with("tan_")));
        assert_eq!(near("peak_nitrite")[0], "nitrite_peak_mg_n_per_l");
        assert!(near("moonlight").is_empty());
    }
}
