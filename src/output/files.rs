//! What makes files: a folder is written whole or not at all. Only `growing` makes any beside it.
//!
//! A draft under a hidden name is filled beside the target and then renamed, which the kernel does
//! in one step and refuses if the name has been taken meanwhile. The process that fills a draft
//! holds a lock on it; a draft that nobody holds is the rest of a killed run and is removed.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::held::{Held, remove_abandoned};
use super::place::{
    Place, WriteError, Written, may_be_replaced, missing_folders, next_names, parent_of,
};
use super::rename;

/// A folder being filled. Dropping it leaves nothing behind.
#[derive(Debug)]
pub struct Draft {
    place: Place,
    held: Option<Held>,
    made: Vec<PathBuf>,
}

impl Draft {
    /// Opens a draft beside its target, after removing drafts that nobody holds.
    ///
    /// # Errors
    /// When the target may not be used or the place cannot be written to.
    pub fn open(place: Place) -> Result<Draft, WriteError> {
        let place = place.plain();
        let target = place.target();
        if target.file_name().is_none() {
            return Err(WriteError::NoName(target.into()));
        }
        place.check()?;
        let parent = parent_of(target);
        let refused = |why| WriteError::NotWritable {
            folder: parent.clone(),
            why,
        };
        let mut draft = Draft {
            made: missing_folders(&parent),
            place,
            held: None,
        };
        fs::create_dir_all(&parent).map_err(refused)?;
        remove_abandoned(&parent);
        draft.held = Some(Held::new(&parent).map_err(refused)?);
        Ok(draft)
    }

    /// Puts a file into the draft.
    ///
    /// # Errors
    /// When the file cannot be written.
    #[expect(clippy::disallowed_methods, reason = "the one place that makes files")]
    pub fn put(&self, name: &str, bytes: &[u8]) -> Result<(), WriteError> {
        fs::write(self.filled().join(name), bytes).map_err(|why| refused(&self.place, why))
    }

    /// Gives the draft its name.
    ///
    /// # Errors
    /// When the name has been taken meanwhile or the system refuses.
    pub fn publish(mut self) -> Result<Written, WriteError> {
        let filled = self.filled();
        let written = publish(&self.place, &filled)?;
        self.made.clear();
        Ok(written)
    }

    fn filled(&self) -> PathBuf {
        let held = self
            .held
            .as_ref()
            .expect("an open draft is held until it is dropped");
        held.folder.path().join("out")
    }
}

/// Gives a filled folder the name of its place; what it replaces is left under the old name.
///
/// # Errors
/// When the name has been taken meanwhile or the system refuses.
pub(super) fn publish(place: &Place, filled: &Path) -> Result<Written, WriteError> {
    match place {
        Place::Free(target) => first_free(place, filled, next_names(target)),
        Place::Exactly(target) => first_free(place, filled, std::iter::once(target.clone())),
        Place::Over(target) => replace(place, filled, target),
    }
}

fn first_free(
    place: &Place,
    filled: &Path,
    names: impl Iterator<Item = PathBuf>,
) -> Result<Written, WriteError> {
    for (tried, folder) in names.enumerate() {
        match rename::to_free(filled, &folder) {
            Ok(()) => {
                return Ok(Written {
                    folder,
                    renamed: tried > 0,
                    replaced: false,
                });
            }
            Err(why) if rename::is_taken(&why) => {}
            Err(why) => return Err(refused(place, why)),
        }
    }
    Err(WriteError::Exists(place.target().into()))
}

fn replace(place: &Place, filled: &Path, target: &Path) -> Result<Written, WriteError> {
    let done = |replaced| Written {
        folder: target.into(),
        renamed: false,
        replaced,
    };
    match rename::to_free(filled, target) {
        Ok(()) => Ok(done(false)),
        Err(why) if rename::is_taken(&why) => {
            place.check()?;
            let exchange = || rename::exchange(filled, target).map_err(|why| refused(place, why));
            exchange()?;
            if !may_be_replaced(filled) {
                // something of somebody else came in at the last moment: it goes back
                exchange()?;
                return Err(WriteError::NotOurs(target.into()));
            }
            Ok(done(true))
        }
        Err(why) => Err(refused(place, why)),
    }
}

fn refused(place: &Place, why: io::Error) -> WriteError {
    WriteError::NotWritable {
        folder: parent_of(place.target()),
        why,
    }
}

impl Drop for Draft {
    fn drop(&mut self) {
        self.held = None;
        for folder in &self.made {
            // only empty folders go; one that has been filled meanwhile stays
            let _ = fs::remove_dir(folder);
        }
    }
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)]
mod tests {
    use super::super::held::DRAFT;
    use super::*;
    use crate::output::place::MARK;

    fn write(place: Place, words: &str) -> Result<Written, WriteError> {
        let draft = Draft::open(place)?;
        draft.put(MARK, words.as_bytes())?;
        draft.publish()
    }

    fn names_in(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_second_run_takes_the_next_free_name_and_says_so() {
        let room = tempfile::tempdir().unwrap();
        let target = room.path().join("output/sixty");
        let first = write(Place::Free(target.clone()), "1").unwrap();
        assert_eq!((first.folder, first.renamed), (target.clone(), false));
        let second = write(Place::Free(target.clone()), "2").unwrap();
        assert!(second.renamed && second.folder.ends_with("sixty-2"));
        write(Place::Free(target), "3").unwrap();
        let names = names_in(&room.path().join("output"));
        assert_eq!(names, ["sixty", "sixty-2", "sixty-3"]);
    }

    #[test]
    fn an_explicit_place_that_exists_is_refused_before_any_work() {
        let room = tempfile::tempdir().unwrap();
        let target = room.path().join("mine");
        write(Place::Exactly(target.clone()), "1").unwrap();
        let refused = Draft::open(Place::Exactly(target)).unwrap_err();
        assert!(matches!(refused, WriteError::Exists(_)));
        assert_eq!(names_in(room.path()), ["mine"]);
    }

    #[test]
    fn force_replaces_an_earlier_run_whole() {
        let room = tempfile::tempdir().unwrap();
        let target = room.path().join("mine");
        let draft = Draft::open(Place::Exactly(target.clone())).unwrap();
        draft.put(MARK, b"1").unwrap();
        draft.put("old.csv", b"x").unwrap();
        draft.publish().unwrap();
        let again = write(Place::Over(target.clone()), "2").unwrap();
        assert!(again.replaced);
        assert_eq!(names_in(&target), [MARK]);
        assert_eq!(names_in(room.path()), ["mine"]);
    }

    #[test]
    fn force_through_a_link_replaces_the_folder_behind_it() {
        let room = tempfile::tempdir().unwrap();
        let (link, there) = (room.path().join("link"), room.path().join("there"));
        write(Place::Exactly(there.clone()), "1").unwrap();
        std::os::unix::fs::symlink("there", &link).unwrap();
        assert!(write(Place::Over(link.clone()), "2").unwrap().replaced);
        assert!(link.is_symlink() && fs::read(there.join(MARK)).unwrap() == b"2");
        assert_eq!(names_in(room.path()), ["link", "there"]);
    }

    #[test]
    fn idle_signs_in_a_place_do_not_matter() {
        let room = tempfile::tempdir().unwrap();
        write(Place::Exactly(room.path().join("mine/.")), "1").unwrap();
        write(Place::Over(room.path().join("./mine//./")), "2").unwrap();
        assert_eq!(names_in(room.path()), ["mine"]);
    }

    #[test]
    fn force_leaves_a_folder_alone_that_is_no_run() {
        let room = tempfile::tempdir().unwrap();
        let target = room.path().join("photos");
        fs::create_dir(&target).unwrap();
        fs::write(target.join("fish.jpg"), b"x").unwrap();
        let refused = Draft::open(Place::Over(target.clone())).unwrap_err();
        assert!(matches!(refused, WriteError::NotOurs(_)));
        assert_eq!(names_in(&target), ["fish.jpg"]);
    }

    #[test]
    fn force_leaves_a_folder_alone_that_came_in_meanwhile() {
        let room = tempfile::tempdir().unwrap();
        let target = room.path().join("photos");
        let draft = Draft::open(Place::Over(target.clone())).unwrap();
        fs::create_dir(&target).unwrap();
        fs::write(target.join("fish.jpg"), b"x").unwrap();
        draft.put(MARK, b"1").unwrap();
        assert!(matches!(draft.publish(), Err(WriteError::NotOurs(_))));
        assert_eq!(names_in(&target), ["fish.jpg"]);
    }

    #[test]
    fn a_draft_that_is_dropped_leaves_nothing_not_even_the_folders_it_made() {
        let room = tempfile::tempdir().unwrap();
        let draft = Draft::open(Place::Free(room.path().join("a/b/c"))).unwrap();
        draft.put("half.csv", b"x").unwrap();
        drop(draft);
        assert_eq!(names_in(room.path()), Vec::<String>::new());
    }

    #[test]
    fn drafts_that_nobody_holds_are_removed_and_held_ones_stay() {
        let room = tempfile::tempdir().unwrap();
        fs::create_dir_all(room.path().join(".firstfill-draft-dead/out")).unwrap();
        let held = Draft::open(Place::Free(room.path().join("first"))).unwrap();
        write(Place::Free(room.path().join("second")), "2").unwrap();
        let names = names_in(room.path());
        assert_eq!(
            names.iter().filter(|name| name.starts_with(DRAFT)).count(),
            1
        );
        assert!(!names.contains(&".firstfill-draft-dead".to_string()));
        held.put(MARK, b"1").unwrap();
        assert!(held.publish().is_ok());
    }

    #[test]
    fn a_place_that_cannot_be_written_to_is_said_in_words() {
        let room = tempfile::tempdir().unwrap();
        let file = room.path().join("file");
        fs::write(&file, b"x").unwrap();
        let refused = Draft::open(Place::Free(file.join("run"))).unwrap_err();
        assert!(
            refused.to_string().starts_with("cannot write to "),
            "{refused}"
        );
    }

    #[test]
    fn a_place_without_a_name_is_refused() {
        let refused = Draft::open(Place::Exactly("..".into())).unwrap_err();
        assert!(matches!(refused, WriteError::NoName(_)));
    }
}
