//! Folders that hold slices of one study: checked against each other, put in order, none missing and none twice.

use std::fs::{self, File};
use std::io::{self, BufReader};
use std::path::{Path, PathBuf};

use thiserror::Error;

use super::manifest::Kept;
use super::results::{FILE, Results};
use crate::output::growing::Growing;
use crate::output::place::{MARK, WriteError};

/// Bytes that are copied at a time.
const BLOCK: usize = 1 << 20;
/// Most numbers of missing slices that are named.
const NAMED: usize = 20;

/// A folder with a slice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// Where it is.
    pub folder: PathBuf,
    /// What its rows belong to.
    pub kept: Kept,
}

/// Why slices are not joined.
#[derive(Debug, Error)]
pub enum SlicesError {
    /// A folder that holds no slice.
    #[error("{} holds no slice of a study: {why}", folder.display())]
    NotASlice {
        /// Which.
        folder: PathBuf,
        /// Why.
        why: String,
    },
    /// Two folders that do not belong together.
    #[error("{} and {} do not belong to one study\n  {}", a.display(), b.display(), differences.join("\n  "))]
    Apart {
        /// The first folder.
        a: PathBuf,
        /// The other one.
        b: PathBuf,
        /// In what they differ: there, in the first; here, in the other.
        differences: Vec<String>,
    },
    /// A slice that is there twice.
    #[error("slice {number} is in {} and in {}; rows never count twice, so name one of them only", a.display(), b.display())]
    Twice {
        /// Which slice.
        number: u64,
        /// One folder.
        a: PathBuf,
        /// The other one.
        b: PathBuf,
    },
    /// Slices that are not there.
    #[error("{} of {of} slices {}: {}", numbers.len(), are_missing(numbers.len()), some(numbers))]
    Missing {
        /// Their numbers.
        numbers: Vec<u64>,
        /// Of how many.
        of: u64,
    },
    /// A slice that holds fewer or other rows than it should.
    #[error("{}: of {rows} rows {whole} are whole and in order; run that slice again", folder.display())]
    Torn {
        /// Where.
        folder: PathBuf,
        /// Rows that should be there.
        rows: u64,
        /// Rows that are.
        whole: u64,
    },
    /// A file that cannot be read.
    #[error("{} cannot be read: {why}", folder.display())]
    Unreadable {
        /// Where.
        folder: PathBuf,
        /// What the system says.
        why: io::Error,
    },
    /// The joined rows cannot be written.
    #[error(transparent)]
    Write(#[from] WriteError),
}

fn are_missing(count: usize) -> &'static str {
    if count == 1 {
        "is missing"
    } else {
        "are missing"
    }
}

fn some(numbers: &[u64]) -> String {
    let named: Vec<String> = numbers
        .iter()
        .take(NAMED)
        .map(ToString::to_string)
        .collect();
    let more = if numbers.len() > NAMED {
        " and others"
    } else {
        ""
    };
    format!("{}{more}", named.join(", "))
}

/// The slices in the order of their rows.
///
/// # Errors
/// When a folder holds no slice, or they do not belong together, or one is missing or there twice.
pub fn in_order(folders: &[PathBuf]) -> Result<Vec<Part>, SlicesError> {
    let parts = folders.iter().map(|folder| part(folder));
    let mut parts: Vec<Part> = parts.collect::<Result<_, _>>()?;
    for other in parts.iter().skip(1) {
        let differences = parts[0].kept.differences(&other.kept);
        if !differences.is_empty() {
            return Err(SlicesError::Apart {
                a: parts[0].folder.clone(),
                b: other.folder.clone(),
                differences,
            });
        }
    }
    parts.sort_by_key(|part| part.kept.slice.number);
    let twice = parts
        .windows(2)
        .find(|two| two[0].kept.slice == two[1].kept.slice);
    if let Some([a, b]) = twice {
        return Err(SlicesError::Twice {
            number: a.kept.slice.number,
            a: a.folder.clone(),
            b: b.folder.clone(),
        });
    }
    let of = parts.first().map_or(1, |part| part.kept.slice.of);
    let is_there = |number: &u64| parts.iter().any(|part| part.kept.slice.number == *number);
    let numbers: Vec<u64> = (1..=of).filter(|number| !is_there(number)).collect();
    match numbers.is_empty() {
        true => Ok(parts),
        false => Err(SlicesError::Missing { numbers, of }),
    }
}

fn part(folder: &Path) -> Result<Part, SlicesError> {
    let not_a_slice = |why: String| SlicesError::NotASlice {
        folder: folder.into(),
        why,
    };
    let text = fs::read_to_string(folder.join(MARK));
    let text = text.map_err(|_| not_a_slice(format!("there is no {MARK} in it")))?;
    let kept = Kept::read(&text).map_err(|why| not_a_slice(why.to_string()))?;
    let kept = kept.ok_or_else(|| not_a_slice("its manifest is of another command".into()))?;
    Ok(Part {
        folder: folder.into(),
        kept,
    })
}

/// Writes the rows of all slices one after the other.
///
/// # Errors
/// When a slice holds fewer or other rows than it should, or the system refuses.
pub fn join(
    parts: &[Part],
    results: Results<'_>,
    rows: u64,
    into: &mut Growing,
) -> Result<(), SlicesError> {
    into.cut(0)?;
    into.add(&results.header())?;
    for part in parts {
        let due = part.kept.slice.rows(rows);
        let whole = copied(part, results, due.start, into)? - due.start;
        if whole != due.end - due.start {
            return Err(SlicesError::Torn {
                folder: part.folder.clone(),
                rows: due.end - due.start,
                whole,
            });
        }
    }
    Ok(())
}

/// Copies the rows of a slice, and says which row would be next.
fn copied(
    part: &Part,
    results: Results<'_>,
    first: u64,
    into: &mut Growing,
) -> Result<u64, SlicesError> {
    let unreadable = |why| SlicesError::Unreadable {
        folder: part.folder.clone(),
        why,
    };
    let file = File::open(part.folder.join(FILE)).map_err(unreadable)?;
    let (mut block, mut refused) = (String::new(), None);
    let read = results.read(BufReader::new(file), first, |_, line| {
        block.push_str(line);
        if block.len() > BLOCK {
            let added = into.add(&block);
            block.clear();
            added.map_err(|why| {
                refused = Some(why);
                io::Error::other("the joined rows cannot be written")
            })?;
        }
        Ok(())
    });
    if let Some(why) = refused {
        return Err(why.into());
    }
    let (_, next) = read.map_err(unreadable)?;
    into.add(&block)?;
    Ok(next)
}
