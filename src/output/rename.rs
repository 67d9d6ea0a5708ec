//! A folder changes its name in one step: to a name nobody has, or in exchange with another folder.

use std::fs;
use std::io;
use std::path::Path;

use rustix::fs::{CWD, RenameFlags, renameat_with};
use rustix::io::Errno;

use super::place::next_names;

/// Renames a folder to a name that is free.
///
/// # Errors
/// With [`io::ErrorKind::AlreadyExists`] when the name is taken; else what the system says.
pub fn to_free(from: &Path, to: &Path) -> io::Result<()> {
    match renameat_with(CWD, from, CWD, to, RenameFlags::NOREPLACE) {
        Err(errno) if is_unsupported(errno) => to_free_by_hand(from, to),
        other => other.map_err(io::Error::from),
    }
}

/// Gives two folders each other's name.
///
/// # Errors
/// What the system says; both then stand where they stood.
pub fn exchange(new: &Path, old: &Path) -> io::Result<()> {
    match renameat_with(CWD, new, CWD, old, RenameFlags::EXCHANGE) {
        Err(errno) if is_unsupported(errno) => exchange_by_hand(new, old),
        other => other.map_err(io::Error::from),
    }
}

/// Whether a name is taken.
pub fn is_taken(why: &io::Error) -> bool {
    why.kind() == io::ErrorKind::AlreadyExists
}

fn is_unsupported(errno: Errno) -> bool {
    [Errno::INVAL, Errno::NOSYS, Errno::NOTSUP].contains(&errno)
}

/// For file systems without the flag: takes the name with an empty folder, which a folder may replace.
fn to_free_by_hand(from: &Path, to: &Path) -> io::Result<()> {
    fs::create_dir(to)?;
    fs::rename(from, to).inspect_err(|_| {
        // the folder of a moment ago, empty unless somebody has put something into it
        let _ = fs::remove_dir(to);
    })
}

/// For file systems without the flag: the old folder steps aside under a visible name.
///
/// Whoever is killed between two of these steps leaves both folders whole, and none under a name
/// that a later run would clear away.
fn exchange_by_hand(new: &Path, old: &Path) -> io::Result<()> {
    let mut name = old.as_os_str().to_os_string();
    name.push("-earlier");
    let mut free = next_names(Path::new(&name)).filter(|name| fs::symlink_metadata(name).is_err());
    let aside = free.next().ok_or(io::ErrorKind::AlreadyExists)?;
    fs::rename(old, &aside)?;
    if let Err(why) = fs::rename(new, old) {
        fs::rename(&aside, old)?;
        return Err(why);
    }
    fs::rename(&aside, new)
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)]
mod tests {
    use super::*;

    /// A room with one folder, in which a file bears the folder's name.
    fn room(folders: &[&str]) -> tempfile::TempDir {
        let room = tempfile::tempdir().unwrap();
        for name in folders {
            fs::create_dir(room.path().join(name)).unwrap();
            fs::write(room.path().join(name).join(name), name).unwrap();
        }
        room
    }

    #[test]
    fn by_hand_and_by_the_kernel_two_folders_change_places() {
        for way in [exchange, exchange_by_hand] {
            let room = room(&["new", "old"]);
            let (new, old) = (room.path().join("new"), room.path().join("old"));
            way(&new, &old).unwrap();
            assert!(old.join("new").is_file() && new.join("old").is_file());
            assert_eq!(fs::read_dir(room.path()).unwrap().count(), 2);
        }
    }

    #[test]
    fn an_exchange_by_hand_that_fails_half_way_puts_the_old_folder_back() {
        let room = room(&["old", "old-earlier"]);
        let (new, old) = (room.path().join("new"), room.path().join("old"));
        assert!(exchange_by_hand(&new, &old).is_err());
        assert!(old.join("old").is_file());
        assert!(room.path().join("old-earlier/old-earlier").is_file());
        assert_eq!(fs::read_dir(room.path()).unwrap().count(), 2);
    }

    #[test]
    fn by_hand_and_by_the_kernel_a_taken_name_stays_with_its_folder() {
        for way in [to_free, to_free_by_hand] {
            let room = room(&["new", "old"]);
            let (new, old) = (room.path().join("new"), room.path().join("old"));
            assert!(is_taken(&way(&new, &old).unwrap_err()));
            assert!(old.join("old").is_file() && new.join("new").is_file());
            way(&new, &room.path().join("free")).unwrap();
            assert!(room.path().join("free/new").is_file());
        }
    }

    #[test]
    fn a_name_taken_by_hand_in_vain_is_given_back() {
        let room = room(&[]);
        let (new, free) = (room.path().join("new"), room.path().join("free"));
        assert!(to_free_by_hand(&new, &free).is_err());
        assert!(!free.exists());
    }
}
