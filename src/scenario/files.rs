//! Scenario files as texts: read with care, each kept for messages and for the manifest.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

use super::problem::Problem;

/// Larger files are refused unread: thirty times the longest scenario of the project. It bounds the
/// time and the memory that any file can cost.
pub const LARGEST_BYTES: usize = 100_000;

/// The files of a scenario, in the order in which they were read.
#[derive(Debug, Clone, Default)]
pub struct Files {
    list: Vec<(PathBuf, String)>,
    /// Texts that stand for the files of these names; none where files are read.
    kept: Option<Vec<(PathBuf, String)>>,
}

impl Files {
    /// No file read yet, and none to be: texts that were kept stand for them.
    pub fn of_kept(kept: Vec<(PathBuf, String)>) -> Files {
        Files {
            list: Vec::new(),
            kept: Some(kept),
        }
    }
    /// Whether texts that were kept stand for the files.
    pub fn are_kept(&self) -> bool {
        self.kept.is_some()
    }
    /// The text of a further file: as it was kept, or read.
    ///
    /// # Errors
    /// With the one problem of the file.
    pub fn fetch(&self, path: &Path) -> Result<String, Box<Problem>> {
        let Some(kept) = &self.kept else {
            return read(path);
        };
        let found = kept.iter().find(|(name, _)| name == path);
        found.map(|(_, text)| text.clone()).ok_or_else(|| {
            let name = path.display().to_string();
            let title = format!("the text of {name} was not kept");
            Box::new(Problem::of_file(name, title))
        })
    }
    /// Keeps a text under a name.
    pub fn add(&mut self, path: &Path, text: String) -> usize {
        self.list.push((path.to_path_buf(), text));
        self.list.len() - 1
    }
    /// The text of a file.
    pub fn text(&self, file: usize) -> &str {
        &self.list[file].1
    }
    /// The name of a file as the user would write it.
    pub fn name(&self, file: usize) -> String {
        self.list[file].0.display().to_string()
    }
    /// All files with their texts.
    pub fn into_list(self) -> Vec<(PathBuf, String)> {
        self.list
    }
}

/// Reads a file as text.
///
/// A byte-order mark is dropped. A folder, a missing or unreadable file, a file of more than
/// [`LARGEST_BYTES`] (refused before reading), and bytes that are no UTF-8 are problems.
///
/// # Errors
/// With the one problem of the file.
pub fn read(path: &Path) -> Result<String, Box<Problem>> {
    let name = path.display().to_string();
    let meta = std::fs::metadata(path).map_err(|error| Box::new(unreadable(&name, &error)))?;
    if meta.is_dir() {
        return Err(Box::new(folder(path, &name)));
    }
    let most = LARGEST_BYTES as u64;
    if meta.len() > most {
        return Err(Box::new(too_large(&name, meta.len())));
    }
    let mut bytes = Vec::new();
    // a pipe does not tell its length beforehand
    File::open(path)
        .and_then(|file| file.take(most + 1).read_to_end(&mut bytes))
        .map_err(|error| Box::new(unreadable(&name, &error)))?;
    if bytes.len() > LARGEST_BYTES {
        return Err(Box::new(too_large(&name, bytes.len() as u64)));
    }
    text(&name, bytes).map_err(Box::new)
}

/// Bytes as text, without a byte-order mark.
#[allow(clippy::result_large_err)] // boxed by the one caller
fn text(name: &str, bytes: Vec<u8>) -> Result<String, Problem> {
    let error = match String::from_utf8(bytes) {
        Ok(text) => return Ok(without_mark(&text).to_string()),
        Err(error) => error,
    };
    let good = error.utf8_error().valid_up_to();
    let bytes = error.as_bytes();
    let line = bytes[..good].iter().filter(|&&b| b == b'\n').count() + 1;
    let title = format!(
        "line {line} holds the byte 0x{:02X}, which is not UTF-8 text",
        bytes[good]
    );
    Err(Problem::of_file(format!("{name}:{line}"), title)
        .help("save the file as UTF-8 in the editor (not as Latin-1, ANSI or UTF-16)"))
}

/// A text without the byte-order mark that some editors put before it.
pub fn without_mark(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

fn folder(path: &Path, name: &str) -> Problem {
    let inside = path.join("tank.toml");
    Problem::of_file(name, format!("{name} is a folder, not a file")).help(format!(
        "name a scenario inside it, for example {}",
        inside.display()
    ))
}

/// The problem of a file of more than [`LARGEST_BYTES`].
pub fn too_large(name: &str, bytes: u64) -> Problem {
    let size = if bytes < 1_000_000 {
        format!("over {} kB", LARGEST_BYTES / 1000)
    } else {
        format!("{:.0} MB", bytes as f64 / 1e6)
    };
    let title = format!("{name} is {size}; a scenario is a few kB of text");
    Problem::of_file(name, title)
        .help("is it really the scenario, and not a film or a table of results?")
}

fn unreadable(name: &str, error: &std::io::Error) -> Problem {
    match error.kind() {
        std::io::ErrorKind::NotFound => Problem::of_file(name, format!("there is no file {name}"))
            .help("check the spelling and the folder you are in"),
        std::io::ErrorKind::PermissionDenied => {
            Problem::of_file(name, format!("{name} may not be read"))
                .help("check the permissions of the file")
        }
        _ => Problem::of_file(name, format!("{name} cannot be read: {error}")),
    }
}
