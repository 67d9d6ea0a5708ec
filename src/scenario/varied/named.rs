//! What is varied in a few words: `days between changes` for `changes.early.every`.

use crate::model::parameters;

use super::paths::key_of;

/// Longest description of a key that stands as it is, signs.
const LONGEST: usize = 40;
/// Keys whose description is too long, or says nothing away from its section; of timers what is behind their path.
const IN_FEW_WORDS: [(&str, &str); 20] = [
    ("changes.NAME.every", "days between changes"),
    ("changes.NAME.share", "share of water changed"),
    ("changes.NAME.day", "day of the change"),
    ("trims.NAME.every", "days between trims"),
    ("doses.NAME.every", "days between doses"),
    ("siphons.NAME.every", "days between siphonings"),
    ("wipes.NAME.every", "days between wipes"),
    ("cleanings.NAME.every", "days between cleanings"),
    ("air.on.for", "hours of air a night"),
    ("air.flow", "air flow"),
    ("gas.on.for", "hours of gas a day"),
    ("gas.hold", "CO2 to hold"),
    ("gas.rate", "gas a day"),
    ("light.on.for", "hours of light a day"),
    ("soil.amount", "amount of soil"),
    ("seed.NAME.amount", "mature medium"),
    ("seed.NAME.day", "day of the mature medium"),
    ("stock.NAME.count", "number of animals"),
    ("stock.NAME.each", "mass of one animal"),
    ("tank.temperature", "temperature of the tank"),
];
/// Signs that part what a key is from what else is said of it.
const PARTS: [&str; 3] = [", ", "; ", ": "];

/// What a path is in a few words; none where it is not known, or where there are none short enough.
pub fn in_a_few_words(path: &str) -> Option<String> {
    let key = key_of(path)?;
    let is_within = key.path.split('.').count() < path.split('.').count();
    let whole = match (is_within, path.rsplit_once('.')) {
        (true, Some((_, last))) => format!("{}.{last}", key.path),
        _ => key.path.to_string(),
    };
    if let Some((_, words)) = IN_FEW_WORDS.iter().find(|(known, _)| *known == whole) {
        return Some(words.to_string());
    }
    let meaning = match path.split('.').collect::<Vec<_>>().as_slice() {
        ["parameters", id, "value"] => parameters::spec(id)?.meaning,
        _ if is_within => return None,
        _ => key.meaning,
    };
    short(meaning)
}

/// A description if it is short, or its first part if that is.
fn short(meaning: &str) -> Option<String> {
    let is_short = |words: &&str| words.chars().count() <= LONGEST;
    let first = PARTS.iter().filter_map(|part| meaning.split_once(part));
    let first = first
        .map(|(first, _)| first)
        .min_by_key(|first| first.len());
    let found = std::iter::once(meaning).chain(first).find(is_short);
    found.map(str::to_string)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::keys::KEYS;

    #[test]
    fn keys_have_few_words_and_strangers_none() {
        let few = |path: &str| in_a_few_words(path);
        let told = |path: &str| few(path).unwrap_or_else(|| panic!("{path} has no words"));
        assert_eq!(told("changes.early.every"), "days between changes");
        assert_eq!(told("air.on.for"), "hours of air a night");
        assert_eq!(told("doses.weekly.ammonium"), "ammonium salt");
        assert_eq!(
            told("water.tap.alkalinity"),
            "alkalinity (KH) of the tap water"
        );
        let meaning = parameters::spec("k_Fe").unwrap().meaning;
        assert_eq!(few("parameters.k_Fe.value").as_deref(), Some(meaning));
        assert_eq!(few("parameters.nothing.value"), None);
        assert_eq!(few("moon.phase"), None);
        assert_eq!(few("refill.blend.ro"), None);
    }

    #[test]
    fn what_has_words_of_its_own_is_a_key_or_a_timer() {
        for (path, words) in IN_FEW_WORDS {
            let key = path.strip_suffix(".for").unwrap_or(path);
            assert!(KEYS.iter().any(|known| known.path == key), "{path}");
            assert!(words.chars().count() <= LONGEST);
        }
    }
}
