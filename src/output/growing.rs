//! A folder that grows over many sittings: rows are added to it in whole blocks, it may be left at any moment and gone
//! on with later, and it gets its name when all is there.
//!
//! Until then it stands beside its target under a hidden name, `.firstfill-part-<name of the target>`. Who works on it
//! holds a lock. What it belongs to is written before the first row; a line that was torn when a sitting was killed
//! is cut off by the next one.

use std::fs::{self, File, OpenOptions};
use std::io::{self, BufReader, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use rustix::fs::{FlockOperation, flock, statvfs};

use super::files::publish;
use super::folder::Entry;
use super::place::{MARK, Place, WriteError, Written, parent_of};

/// How the name of such a folder begins.
const PART: &str = ".firstfill-part-";
/// Name under which the manifest is written before it is there whole.
const UNDER_WAY: &str = "manifest.under-way";

/// A folder that grows, held by this process.
#[derive(Debug)]
pub struct Growing {
    place: Place,
    folder: PathBuf,
    rows_file: &'static str,
    rows: File,
    _lock: File,
}

/// What is found where a folder is to grow.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Found {
    /// Nothing.
    Nothing,
    /// An unfinished folder, with its manifest.
    Unfinished(String),
    /// A finished one, with its manifest.
    Finished(String),
}

/// Somebody else works on the folder.
#[derive(Debug, thiserror::Error)]
pub enum GrowingError {
    /// Another process holds it.
    #[error("{} is being written by another run", .0.display())]
    InUse(PathBuf),
    /// The system refuses.
    #[error(transparent)]
    Write(#[from] WriteError),
}

/// Where a folder grows until it gets the name of its target.
pub fn hidden(target: &Path) -> PathBuf {
    let mut name = std::ffi::OsString::from(PART);
    name.push(target.file_name().unwrap_or_default());
    parent_of(target).join(name)
}

/// What is there already of a target: an unfinished folder goes before a finished one.
pub fn found(target: &Path) -> Found {
    let manifest = |folder: &Path| fs::read_to_string(folder.join(MARK)).ok();
    match (manifest(&hidden(target)), manifest(target)) {
        (Some(text), _) => Found::Unfinished(text),
        (None, Some(text)) => Found::Finished(text),
        (None, None) => Found::Nothing,
    }
}

/// Bytes that are free where a folder is to grow, where the system tells.
pub fn free_bytes(target: &Path) -> Option<u64> {
    let there = target.ancestors().find(|folder| folder.is_dir());
    let told = statvfs(there.unwrap_or(Path::new("."))).ok()?;
    Some(told.f_bavail.saturating_mul(told.f_frsize))
}

impl Growing {
    /// Begins a folder, or goes on with one: `anew` takes what is there away first. Its rows go to `rows_file`.
    ///
    /// # Errors
    /// When the target may not be used, another process holds the folder, or the system refuses.
    pub fn open(
        place: Place,
        manifest: &str,
        rows_file: &'static str,
        anew: bool,
    ) -> Result<Growing, GrowingError> {
        let place = place.plain();
        let target = place.target().to_path_buf();
        if target.file_name().is_none() {
            return Err(WriteError::NoName(target).into());
        }
        place.check()?;
        let folder = hidden(&target);
        let refused = |why| refused(&target, why);
        fs::create_dir_all(&folder).map_err(refused)?;
        let lock = File::open(&folder).map_err(refused)?;
        if flock(&lock, FlockOperation::NonBlockingLockExclusive).is_err() {
            return Err(GrowingError::InUse(folder));
        }
        let rows = begun(&folder, manifest, rows_file, anew).map_err(refused)?;
        Ok(Growing {
            place,
            folder,
            rows_file,
            rows,
            _lock: lock,
        })
    }

    /// The rows so far, from the first.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn read(&self) -> Result<BufReader<File>, WriteError> {
        let file = File::open(self.folder.join(self.rows_file));
        file.map(BufReader::new).map_err(|why| self.refused(why))
    }

    /// Cuts the rows off after so many bytes, and goes on there.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn cut(&mut self, bytes: u64) -> Result<(), WriteError> {
        let cut = self.rows.set_len(bytes);
        let end = cut.and_then(|()| self.rows.seek(SeekFrom::Start(bytes)));
        end.map(drop).map_err(|why| self.refused(why))
    }

    /// Adds a block of whole lines.
    ///
    /// # Errors
    /// When the system refuses; what was there before stands.
    pub fn add(&mut self, block: &str) -> Result<(), WriteError> {
        self.rows
            .write_all(block.as_bytes())
            .map_err(|why| self.refused(why))
    }

    /// Puts the other files in, takes out what an earlier sitting may have left, and gives the folder its name.
    ///
    /// # Errors
    /// When the name has been taken meanwhile or the system refuses; the folder then stays as it is.
    pub fn finish(self, entries: &[Entry]) -> Result<Written, WriteError> {
        self.clear_but(&[MARK, self.rows_file])
            .map_err(|why| self.refused(why))?;
        for entry in entries {
            put(&self.folder.join(&entry.name), &entry.bytes).map_err(|why| self.refused(why))?;
        }
        self.rows.sync_all().map_err(|why| self.refused(why))?;
        let written = publish(&self.place, &self.folder)?;
        if written.replaced {
            // the earlier run, which has changed places with this one; a rest that stays does no harm
            let _ = fs::remove_dir_all(&self.folder);
        }
        Ok(written)
    }

    /// Where it grows.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    fn clear_but(&self, kept: &[&str]) -> io::Result<()> {
        for entry in fs::read_dir(&self.folder)? {
            let entry = entry?;
            if !kept.iter().any(|name| entry.file_name() == *name) {
                fs::remove_file(entry.path())?;
            }
        }
        Ok(())
    }

    fn refused(&self, why: io::Error) -> WriteError {
        refused(self.place.target(), why)
    }
}

fn refused(target: &Path, why: io::Error) -> WriteError {
    WriteError::NotWritable {
        folder: parent_of(target),
        why,
    }
}

/// The file of the rows, in a folder whose manifest is there.
fn begun(folder: &Path, manifest: &str, rows_file: &str, anew: bool) -> io::Result<File> {
    let mark = folder.join(MARK);
    if anew || !mark.is_file() {
        for entry in fs::read_dir(folder)? {
            fs::remove_file(entry?.path())?;
        }
        put(&folder.join(UNDER_WAY), manifest.as_bytes())?;
        fs::rename(folder.join(UNDER_WAY), mark)?;
    }
    let mut options = OpenOptions::new();
    let options = options.create(true).read(true).write(true).truncate(false);
    options.open(folder.join(rows_file))
}

#[expect(
    clippy::disallowed_methods,
    reason = "the other place that makes files"
)]
fn put(path: &Path, bytes: &[u8]) -> io::Result<()> {
    fs::write(path, bytes)
}
