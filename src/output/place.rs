//! Where a folder may be put, and why not.

use std::ffi::OsString;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// File that marks a folder as the output of an earlier run.
pub const MARK: &str = "manifest.json";

/// Where a run is to be put.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// There, or at the next free name: `-2`, `-3` and so on.
    Free(PathBuf),
    /// There and nowhere else; refused if something is there.
    Exactly(PathBuf),
    /// There, replacing an earlier run.
    Over(PathBuf),
}

/// A folder that has been written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// Where it is.
    pub folder: PathBuf,
    /// Whether the first choice was taken and another name was used.
    pub renamed: bool,
    /// Whether an earlier run was replaced.
    pub replaced: bool,
}

/// Why nothing was written.
#[derive(Debug, thiserror::Error)]
pub enum WriteError {
    /// Something is at the place asked for.
    #[error("{} is already there; name another folder with --out, or replace that one with --force", .0.display())]
    Exists(PathBuf),
    /// What is there was not made by this program.
    #[error("{} holds no {MARK}, so it is not the output of an earlier run; --force leaves it alone, name another folder with --out", .0.display())]
    NotOurs(PathBuf),
    /// The place has no name of its own, as `.` or `/`.
    #[error("{} cannot be made anew; name a folder that does not exist yet, for example --out results", .0.display())]
    NoName(PathBuf),
    /// The system refuses.
    #[error("cannot write to {}: {}; {}", folder.display(), in_words(why), what_to_try(why))]
    NotWritable {
        /// Where.
        folder: PathBuf,
        /// What the system says.
        why: io::Error,
    },
}

/// What the system says, without its numbers and our hidden names.
fn in_words(why: &io::Error) -> String {
    match why.kind() {
        io::ErrorKind::NotFound => "there is no such folder".into(),
        io::ErrorKind::AlreadyExists | io::ErrorKind::NotADirectory => {
            "a file is in the way".into()
        }
        io::ErrorKind::PermissionDenied => "permission is denied".into(),
        io::ErrorKind::ReadOnlyFilesystem => "it can only be read".into(),
        io::ErrorKind::StorageFull => "the disk is full".into(),
        io::ErrorKind::QuotaExceeded => "your share of the disk is full".into(),
        io::ErrorKind::FileTooLarge => "files may not grow so large there".into(),
        _ => why.to_string(),
    }
}

fn what_to_try(why: &io::Error) -> &'static str {
    use io::ErrorKind::{FileTooLarge, QuotaExceeded, StorageFull};
    match why.kind() {
        StorageFull | QuotaExceeded | FileTooLarge => {
            "nothing was written; make room, leave the charts out with --no-charts, or name a \
             folder on another disk with --out"
        }
        _ => "check that the folder exists and is yours, or name another with --out",
    }
}

impl Place {
    /// Where it is asked for: a folder that must not be there yet, or else the usual one, or the next free
    /// name; by force what is there is replaced.
    pub fn asked(named: Option<&Path>, by_force: bool, usual: &Path) -> Place {
        match (named, by_force) {
            (named, true) => Place::Over(named.unwrap_or(usual).into()),
            (Some(named), false) => Place::Exactly(named.into()),
            (None, false) => Place::Free(usual.into()),
        }
    }
    /// Where results of a command about one file go: if nothing else is asked, `output/<command>-<stem>`.
    pub fn of_file(named: Option<&Path>, by_force: bool, command: &str, file: &Path) -> Place {
        let mut name = OsString::from(format!("{command}-"));
        name.push(file.file_stem().unwrap_or_default());
        Place::asked(named, by_force, &PathBuf::from("output").join(name))
    }
    /// The folder asked for.
    pub fn target(&self) -> &Path {
        match self {
            Place::Free(target) | Place::Exactly(target) | Place::Over(target) => target,
        }
    }

    /// The same place without idle signs such as `./` at its end; what replaces follows a link, so
    /// that the folder behind it is replaced and not the link.
    pub(super) fn plain(self) -> Place {
        let plain = |target: PathBuf| target.components().collect::<PathBuf>();
        match self {
            Place::Free(target) => Place::Free(plain(target)),
            Place::Exactly(target) => Place::Exactly(plain(target)),
            Place::Over(target) if target.is_symlink() => {
                Place::Over(fs::canonicalize(&target).unwrap_or(target))
            }
            Place::Over(target) => Place::Over(plain(target)),
        }
    }

    /// Refuses a target that may not be used.
    pub(super) fn check(&self) -> Result<(), WriteError> {
        match self {
            Place::Free(_) => Ok(()),
            Place::Exactly(target) if fs::symlink_metadata(target).is_ok() => {
                Err(WriteError::Exists(target.clone()))
            }
            Place::Exactly(_) => Ok(()),
            Place::Over(target) if may_be_replaced(target) => Ok(()),
            Place::Over(target) => Err(WriteError::NotOurs(target.clone())),
        }
    }
}

/// Only what is not there, an empty folder, or an earlier run may be replaced.
pub(super) fn may_be_replaced(target: &Path) -> bool {
    if fs::symlink_metadata(target).is_err() || target.join(MARK).is_file() {
        return true;
    }
    fs::read_dir(target).is_ok_and(|mut entries| entries.next().is_none())
}

/// The folder a target lies in.
pub(super) fn parent_of(target: &Path) -> PathBuf {
    match target.parent() {
        Some(parent) if parent.as_os_str().is_empty() => ".".into(),
        Some(parent) => parent.into(),
        None => target.into(),
    }
}

/// Folders that have to be made for a path, the deepest first.
pub(super) fn missing_folders(path: &Path) -> Vec<PathBuf> {
    path.ancestors()
        .take_while(|folder| !folder.as_os_str().is_empty() && !folder.exists())
        .map(Path::to_path_buf)
        .collect()
}

/// `output/sixty`, `output/sixty-2`, `output/sixty-3` and so on.
pub(super) fn next_names(target: &Path) -> impl Iterator<Item = PathBuf> {
    let stem = target.as_os_str().to_os_string();
    let numbered = (2..10_000).map(move |number| {
        let mut name = stem.clone();
        name.push(format!("-{number}"));
        PathBuf::from(name)
    });
    std::iter::once(target.to_path_buf()).chain(numbered)
}
