//! Drafts that are held: a hidden folder that one process fills and holds a lock on. One that nobody holds is
//! the rest of a killed run.

use std::fs::{self, File};
use std::io;
use std::path::Path;

use rustix::fs::{FlockOperation, flock};
use tempfile::TempDir;

/// How the name of a draft begins. What begins so and is locked by nobody is cleared away, so that
/// nobody else may want such a name.
pub(super) const DRAFT: &str = ".firstfill-draft-";
const TRIES: u32 = 10;

/// A draft, and the lock on it. Dropping it removes both.
#[derive(Debug)]
pub(super) struct Held {
    pub(super) folder: TempDir,
    _lock: File,
}

impl Held {
    /// Makes a draft in a folder and locks it.
    pub(super) fn new(parent: &Path) -> io::Result<Held> {
        let mut swept = io::Error::other("other runs keep removing the draft");
        for _ in 0..TRIES {
            match Held::once(parent) {
                Ok(Some(held)) => return Ok(held),
                Ok(None) => {}
                Err(why) if why.kind() == io::ErrorKind::NotFound => swept = why,
                Err(why) => return Err(why),
            }
        }
        Err(swept)
    }

    /// None, or not found, when another run took the draft for an abandoned one before it was
    /// locked, or took away the empty parent that it had made itself.
    fn once(parent: &Path) -> io::Result<Option<Held>> {
        fs::create_dir_all(parent)?;
        let folder = tempfile::Builder::new().prefix(DRAFT).tempdir_in(parent)?;
        let lock = File::open(folder.path())?;
        if flock(&lock, FlockOperation::NonBlockingLockExclusive).is_err() {
            return Ok(None);
        }
        fs::create_dir(folder.path().join("out"))?;
        Ok(Some(Held {
            folder,
            _lock: lock,
        }))
    }
}

/// Removes the drafts of a folder that nobody holds.
pub(super) fn remove_abandoned(parent: &Path) {
    let Ok(entries) = fs::read_dir(parent) else {
        return;
    };
    for entry in entries.flatten() {
        let is_draft = entry.file_name().to_string_lossy().starts_with(DRAFT)
            && entry.file_type().is_ok_and(|kind| kind.is_dir());
        if !is_draft {
            continue;
        }
        if let Ok(lock) = File::open(entry.path())
            && flock(&lock, FlockOperation::NonBlockingLockExclusive).is_ok()
        {
            // a rest that cannot be removed does no harm: its name is hidden and never used again
            let _ = fs::remove_dir_all(entry.path());
        }
    }
}
