//! What can go wrong with files: what was tried, where, why, and what to do.

use crate::text::{Prose, Slot, Words};
use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// A trouble with a file or folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoreTrouble {
    /// What was tried.
    pub doing: Doing,
    /// The file or folder.
    pub place: PathBuf,
    /// Why it did not work.
    pub cause: Cause,
}

/// What was tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// To make a folder.
    MakeFolder,
    /// To read a folder.
    ReadFolder,
    /// To write down who a learner is.
    WriteLearner,
    /// To write down under which name somebody works.
    NameLearner,
    /// To write down what a learner has chosen.
    WriteSettings,
    /// To give a journal to another learner.
    MoveJournal,
    /// To start a journal.
    StartJournal,
    /// To write a problem file of a learner's own.
    WriteProblem,
    /// To add a record to a journal.
    Append,
}

/// Why it did not work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Cause {
    /// The folder or drive may not be written, or not by this user.
    NotAllowed,
    /// The disk, or this user's share of it, is full.
    DiskFull,
    /// The file or folder is no longer there.
    Vanished,
    /// A file stands where a folder is needed.
    NotAFolder,
    /// Another cause, in the words of the operating system.
    Other(String),
}

impl StoreTrouble {
    pub(super) fn new(doing: Doing, place: &Path, error: &io::Error) -> StoreTrouble {
        StoreTrouble {
            doing,
            place: place.to_owned(),
            cause: Cause::of(error),
        }
    }

    /// What is wrong, where, and what to do, for the learner.
    pub fn say(&self, words: &Words) -> Prose {
        let place = Slot::Value(self.place.display().to_string());
        let doing = match self.doing {
            Doing::MakeFolder => "store.doing.make_folder",
            Doing::ReadFolder => "store.doing.read_folder",
            Doing::WriteLearner => "store.doing.write_learner",
            Doing::NameLearner => "store.doing.name_learner",
            Doing::WriteSettings => "store.doing.write_settings",
            Doing::MoveJournal => "store.doing.move_journal",
            Doing::StartJournal => "store.doing.start_journal",
            Doing::WriteProblem => "store.doing.write_problem",
            Doing::Append => "store.doing.append",
        };
        let mut slots = Vec::new();
        let cause = match &self.cause {
            Cause::NotAllowed => "store.cause.not_allowed",
            Cause::DiskFull => "store.cause.disk_full",
            Cause::Vanished => "store.cause.vanished",
            Cause::NotAFolder => "store.cause.not_a_folder",
            Cause::Other(system) => {
                slots.push(("system", Slot::Word(system.clone())));
                "store.cause.other"
            }
        };
        let then = match self.doing {
            Doing::Append => "store.then.append",
            Doing::ReadFolder => "store.then.read_folder",
            Doing::NameLearner | Doing::MoveJournal => "store.then.name",
            Doing::WriteSettings => "store.then.settings",
            Doing::WriteProblem => "store.then.write_problem",
            _ => "store.then.elsewhere",
        };
        words
            .say(doing, &[("place", place)])
            .then(words.say(cause, &slots))
            .then(words.say(then, &[]))
    }
}

impl Cause {
    fn of(error: &io::Error) -> Cause {
        match error.kind() {
            io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
                Cause::NotAllowed
            }
            io::ErrorKind::StorageFull
            | io::ErrorKind::QuotaExceeded
            | io::ErrorKind::FileTooLarge
            | io::ErrorKind::WriteZero => Cause::DiskFull,
            io::ErrorKind::NotFound | io::ErrorKind::StaleNetworkFileHandle => Cause::Vanished,
            io::ErrorKind::NotADirectory | io::ErrorKind::AlreadyExists => Cause::NotAFolder,
            _ => Cause::Other(error.to_string()),
        }
    }
}

impl fmt::Display for StoreTrouble {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}", self.say(&Words::english()))
    }
}

impl std::error::Error for StoreTrouble {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    #[cfg(target_os = "linux")]
    fn val_the_error_numbers_of_linux_are_told_as_what_they_are() {
        // Numbers and meanings: Linux manual, errno(3), and asm-generic/errno.h.
        let cases = [
            (2, Cause::Vanished),    // ENOENT
            (13, Cause::NotAllowed), // EACCES
            (1, Cause::NotAllowed),  // EPERM
            (30, Cause::NotAllowed), // EROFS
            (28, Cause::DiskFull),   // ENOSPC
            (122, Cause::DiskFull),  // EDQUOT
            (116, Cause::Vanished),  // ESTALE
            (20, Cause::NotAFolder), // ENOTDIR
        ];
        for (number, cause) in cases {
            let error = io::Error::from_raw_os_error(number);
            assert_eq!(Cause::of(&error), cause, "{error}");
        }
        let broken = Cause::of(&io::Error::from_raw_os_error(5));
        assert!(matches!(broken, Cause::Other(system) if system.contains("os error 5")));
    }
}
