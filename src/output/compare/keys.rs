//! Short names of plans, each unlike the others, from the files they stand in.

use std::path::{Path, PathBuf};

/// Longest name of a folder made of the names of plans, bytes.
const LONGEST: usize = 160;

/// One name per file: its stem, with the folder where two are alike, and a number where that is not enough.
pub fn keys(files: &[PathBuf]) -> Vec<String> {
    let stems: Vec<String> = files.iter().map(|file| stem(file)).collect();
    let is_double = |names: &[String], name: &str| names.iter().filter(|n| *n == name).count() > 1;
    let longer = files.iter().zip(&stems);
    let mut names: Vec<String> = longer
        .map(|(file, stem)| match is_double(&stems, stem) {
            true => with_folder(file, stem),
            false => stem.clone(),
        })
        .collect();
    for place in 1..names.len() {
        let wanted = names[place].clone();
        let mut number = 2;
        while names[..place].contains(&names[place]) {
            names[place] = format!("{wanted}-{number}");
            number += 1;
        }
    }
    names
}

fn stem(file: &Path) -> String {
    file.file_stem()
        .unwrap_or(file.as_os_str())
        .to_string_lossy()
        .into_owned()
}

fn with_folder(file: &Path, stem: &str) -> String {
    let folder = file.parent().and_then(Path::file_name);
    match folder {
        Some(folder) => format!("{}-{stem}", folder.to_string_lossy()),
        None => stem.to_string(),
    }
}

/// `compare-sixty-weekly-changes`; of many plans the first ones, and how many more.
pub fn folder_name(keys: &[String]) -> String {
    let mut name = String::from("compare");
    for (place, key) in keys.iter().enumerate() {
        if place > 0 && name.len() + key.len() > LONGEST {
            return format!("{name}-and-{}-more", keys.len() - place);
        }
        name += "-";
        name += key;
    }
    name
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(files: &[&str]) -> Vec<String> {
        keys(&files.iter().map(PathBuf::from).collect::<Vec<_>>())
    }

    #[test]
    fn two_files_of_one_stem_get_names_that_can_be_told_apart() {
        assert_eq!(named(&["a/tank.toml", "b/tank.toml"]), ["a-tank", "b-tank"]);
        assert_eq!(named(&["tank.toml", "tank.toml"]), ["tank", "tank-2"]);
        assert_eq!(named(&["tank.toml", "old/tank.toml"]), ["tank", "old-tank"]);
        assert_eq!(
            named(&["x.toml", "x.toml", "x-2.toml"]),
            ["x", "x-2", "x-2-2"]
        );
    }

    #[test]
    fn a_folder_is_named_after_the_plans_and_never_too_long_for_a_disk() {
        assert_eq!(folder_name(&["a".into(), "b".into()]), "compare-a-b");
        let long: Vec<String> = (0..8).map(|n| format!("{n}{}", "x".repeat(60))).collect();
        let name = folder_name(&long);
        assert!(name.ends_with("-and-6-more") && name.len() < 200, "{name}");
    }
}
