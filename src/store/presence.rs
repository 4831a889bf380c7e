//! Whether another program is at work in a learner's folder.
//!
//! Each program with a sitting shares a lock on the learner's file, which the operating system
//! gives up when the program ends, however it ends. Where a drive knows no locks, nobody is seen.

use super::learner::LEARNER_FILE;
use std::fs::{File, OpenOptions, TryLockError};
use std::path::Path;

/// The mark of a program that is at work in a folder, for as long as this is held.
#[derive(Debug)]
pub(super) struct Presence {
    _mark: Option<File>,
    /// True if another program was at work there when this one came.
    pub(super) joined_others: bool,
}

impl Presence {
    /// No mark anywhere.
    pub(super) fn none() -> Presence {
        Presence {
            _mark: None,
            joined_others: false,
        }
    }

    /// Marks this program as at work in a folder.
    pub(super) fn begin(folder: &Path) -> Presence {
        let mark = open(folder);
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
    open(folder).is_some_and(|mark| is_shared(&mark))
}

/// The learner's file. Some drives lock only what may be written.
fn open(folder: &Path) -> Option<File> {
    let path = folder.join(LEARNER_FILE);
    // A pipe of that name would keep the program waiting for ever.
    let writing = || OpenOptions::new().append(true).open(&path);
    let opened = || writing().or_else(|_| File::open(&path));
    path.is_file().then(opened)?.ok()
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
        std::fs::write(folder.path().join(LEARNER_FILE), "{}").unwrap();
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
    fn verif_a_folder_in_its_place_or_no_file_does_no_harm() {
        let folder = tempfile::tempdir().unwrap();
        assert!(!Presence::begin(folder.path()).joined_others);
        std::fs::create_dir(folder.path().join(LEARNER_FILE)).unwrap();
        assert!(!is_in_use(folder.path()));
        assert!(!Presence::begin(folder.path()).joined_others);
    }
}
