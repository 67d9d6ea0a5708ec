//! A scenario file, read or refused with all that is wrong.

use std::path::Path;

use super::exit::Failure;
use super::say;
use crate::output::manifest;
use crate::scenario::{self, Loaded};

/// Reads a scenario.
pub fn scenario(file: &Path) -> Result<Loaded, Failure> {
    if file.extension().is_some_and(|end| end == "json") {
        let name = file.display();
        return Err(Failure::bad_input(format!(
            "error: {name} is no scenario, and this command repeats no manifest\n  = help: give the scenario, whose name ends in .toml; `firstfill run`, `compare`, `sweep` and `lesson` repeat the manifest.json of their own"
        )));
    }
    scenario::load(file)
        .map_err(|problems| Failure::bad_input(problems.render(say::err_has_colour())))
}

/// The texts of a scenario by name, as a manifest keeps them.
pub fn texts(loaded: &Loaded) -> manifest::Texts {
    let text =
        |(path, text): &(std::path::PathBuf, String)| (path.display().to_string(), text.clone());
    loaded.files.iter().map(text).collect()
}
