//! Looking up the documented keys.

mod key;
mod study;
mod table;

pub use key::Key;
pub use study::STUDY_KEYS;
pub use table::KEYS;

/// Keys of scenarios and of studies.
fn all() -> impl Iterator<Item = &'static Key> {
    KEYS.iter().chain(STUDY_KEYS)
}

/// The key of a path in which names stand as `NAME`.
pub fn key(pattern: &str) -> Option<&'static Key> {
    all().find(|key| key.path == pattern)
}

/// Whether a path is a documented key, or a section of some.
pub fn is_known(pattern: &str) -> bool {
    all().any(|key| {
        key.path == pattern
            || key
                .path
                .strip_prefix(pattern)
                .is_some_and(|rest| rest.starts_with('.'))
    })
}

/// How a key is written; of a section, how one of its entries is.
pub fn example(pattern: &str) -> String {
    if let Some(key) = key(pattern) {
        return key.example.to_string();
    }
    let start = format!("{pattern}.");
    let inside = all().filter_map(|key| {
        let rest = key.path.strip_prefix(&start)?;
        let usual =
            key.default == "required" || rest == "share" || rest == "days" || rest == "every";
        (usual && !rest.contains('.')).then(|| format!("{rest} = {}", key.example))
    });
    let inside: Vec<String> = inside.collect();
    format!("{{ {} }}", inside.join(", "))
}

/// The sections in which a key of this name stands.
pub fn sections_with(name: &str) -> Vec<String> {
    let mut sections = Vec::new();
    for key in KEYS {
        if let Some((section, last)) = key.path.rsplit_once('.')
            && last == name
        {
            sections.push(format!("[{section}]"));
        }
    }
    sections.truncate(3);
    sections
}

/// Place of the section of a path in the order of the documentation.
pub fn section_rank(path: &str) -> usize {
    let wanted = section(path);
    KEYS.iter()
        .position(|key| section(key.path) == wanted)
        .unwrap_or(KEYS.len())
}

fn section(path: &str) -> &str {
    path.split_once('.').map_or(path, |(section, _)| section)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_key_is_documented_twice_and_every_example_is_toml() {
        let mut seen = std::collections::BTreeSet::new();
        for key in all() {
            assert!(seen.insert(key.path), "{} twice", key.path);
            let line = format!("value = {}", key.example);
            assert!(line.parse::<toml::Table>().is_ok(), "{line}");
            assert!(!key.meaning.is_empty());
        }
    }

    #[test]
    fn a_path_finds_its_section_in_the_documentation() {
        assert_eq!(
            KEYS[section_rank("changes.early.share")].path,
            "changes.time"
        );
        assert!(section_rank("tank.inside") < section_rank("air.on.from"));
        assert_eq!(section_rank("nowhere"), KEYS.len());
    }
}
