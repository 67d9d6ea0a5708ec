//! A manifest read back: what it takes to repeat its run to the byte.

use std::path::PathBuf;

use serde::Deserialize;

/// What a manifest says of how its run came about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Repeat {
    /// Version of the program that wrote it.
    pub version: String,
    /// Name and text of every scenario file, the one asked for first; of a lesson in no order that counts.
    pub files: Vec<(PathBuf, String)>,
    /// Name and text of the files of every plan of a comparison; none of a run.
    pub plans: Vec<Vec<(PathBuf, String)>>,
    /// What was asked for on the command line: name and value.
    pub options: Vec<(String, String)>,
}

/// Why a text is no manifest.
#[derive(Debug, thiserror::Error)]
pub enum NotAManifest {
    /// It is no JSON, or lacks a part.
    #[error("it is not the manifest of an earlier run ({0})")]
    Unreadable(#[from] serde_json::Error),
    /// It is the manifest of something else.
    #[error("it was written by {0:?}, not by {own}", own = env!("CARGO_PKG_NAME"))]
    OfAnother(String),
    /// It names no scenario.
    #[error("it holds no scenario")]
    Empty,
}

#[derive(Deserialize)]
struct Manifest {
    program: String,
    version: String,
    scenario: Option<Scenario>,
    /// All files of a lesson, which has no scenario of its own that comes first.
    #[serde(default)]
    files: Vec<ScenarioFile>,
    #[serde(default)]
    scenarios: Vec<Scenario>,
    options: Vec<Named>,
}

#[derive(Deserialize)]
struct Scenario {
    files: Vec<ScenarioFile>,
}

#[derive(Deserialize)]
struct ScenarioFile {
    path: PathBuf,
    text: String,
}

#[derive(Deserialize)]
struct Named {
    name: String,
    value: String,
}

/// Reads the text of a manifest.
///
/// # Errors
/// When it is none, or holds no scenario.
pub fn read(text: &str) -> Result<Repeat, NotAManifest> {
    let manifest: Manifest = serde_json::from_str(text)?;
    if manifest.program != env!("CARGO_PKG_NAME") {
        return Err(NotAManifest::OfAnother(manifest.program));
    }
    let named = |files: Vec<ScenarioFile>| -> Vec<(PathBuf, String)> {
        let files = files.into_iter();
        files.map(|file| (file.path, file.text)).collect()
    };
    let of_scenario = |scenario: Scenario| named(scenario.files);
    let files = match manifest.scenario {
        Some(scenario) => of_scenario(scenario),
        None => named(manifest.files),
    };
    let plans: Vec<_> = manifest.scenarios.into_iter().map(of_scenario).collect();
    let is_empty = |plan: &Vec<_>| plan.is_empty();
    if plans.iter().any(is_empty) || (files.is_empty() && plans.is_empty()) {
        return Err(NotAManifest::Empty);
    }
    Ok(Repeat {
        version: manifest.version,
        files,
        plans,
        options: (manifest.options.into_iter())
            .map(|option| (option.name, option.value))
            .collect(),
    })
}
