//! Whether another program is at work in a learner's folder.
//!
//! Each program with a sitting shares a lock on one empty file, which the operating system gives
//! up when the program ends, however it ends. Where a drive knows no locks, nobody is seen.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io;
use std::path::Path;

/// The file that is locked; it stays empty.
const LOCK_FILE: &str = "in-use.lock";

/// The mark of a program that is at work in a folder, for as long as this is held.
#[derive(Debug)]
pub(super) struct Presence {
    _mark: Option<File>,
    /// True if another program was at work there when this one came.
    pub(super) joined_others: bool,
}

impl Presence {
    /// Marks this program as at work in a folder.
    pub(super) fn begin(folder: &Path) -> Presence {
        let mark = open(folder).ok();
        let joined_others = mark.as_ref().is_some_and(is_shared);
        // Best effort: without a mark the others are not warned, and nothing else changes.
        let mark = mark.filter(|mark| mark.try_lock_shared().is_ok());
        Presence {
            _mark: mark,
            joined_others,
        }
    }
}

/// True if a program is at work in a folder, this one included.
pub(super) fn is_in_use(folder: &Path) -> bool {
    let path = folder.join(LOCK_FILE);
    path.exists() && open(folder).is_ok_and(|mark| is_shared(&mark))
}

fn open(folder: &Path) -> io::Result<File> {
    let path = folder.join(LOCK_FILE);
    // A pipe of that name would keep the program waiting for ever.
    if fs::metadata(&path).is_ok_and(|found| !found.is_file()) {
        return Err(io::ErrorKind::InvalidInput.into());
    }
    let mut options = OpenOptions::new();
    options.append(true).create(true).open(path)
}

/// True if somebody else holds the lock. It is not held afterwards.
fn is_shared(mark: &File) -> bool {
    match mark.try_lock() {
        Ok(()) => {
            let _ = mark.unlock();
            false
        }
        Err(TryLockError::WouldBlock) => true,
        Err(TryLockError::Error(_)) => false,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn verif_one_that_comes_is_told_of_one_that_is_there_until_it_leaves() {
        let folder = tempfile::tempdir().unwrap();
        assert!(!is_in_use(folder.path()));
        let first = Presence::begin(folder.path());
        assert!(!first.joined_others && is_in_use(folder.path()));
        let second = Presence::begin(folder.path());
        assert!(second.joined_others);
        drop(first);
        assert!(is_in_use(folder.path()));
        drop(second);
        assert!(!is_in_use(folder.path()));
        assert!(!Presence::begin(folder.path()).joined_others);
    }

    #[test]
    fn verif_a_folder_in_its_place_does_no_harm() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir(folder.path().join(LOCK_FILE)).unwrap();
        assert!(!is_in_use(folder.path()));
        assert!(!Presence::begin(folder.path()).joined_others);
    }
}
