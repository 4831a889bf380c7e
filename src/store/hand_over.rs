//! A learner without a name gets one: a new one, or that of somebody who is known.

use super::learner::{self, Learner, LearnerName, is_journal};
use super::presence;
use super::sitting::Sitting;
use super::trouble::{Doing, StoreTrouble};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Writes a name down. The mark of a sitting is off the file meanwhile and on the new one after.
pub(super) fn rename(
    folder: &Path,
    of: &Learner,
    name: &LearnerName,
    mut sitting: Option<&mut Sitting>,
) -> Result<Learner, StoreTrouble> {
    if let Some(sitting) = &mut sitting {
        sitting.step_aside();
    }
    let named = learner::rename(folder, of, name);
    if let Some(sitting) = sitting {
        sitting.settle(folder);
    }
    named
}

/// Moves journals from folder to folder: all, or only that of the sitting where another program
/// is at work.
pub(super) fn hand_over(
    from: &Path,
    to: &Path,
    mut sitting: Option<&mut Sitting>,
) -> Result<(), StoreTrouble> {
    if let Some(sitting) = &mut sitting {
        sitting.step_aside();
    }
    let own = sitting.as_ref().map(|sitting| sitting.path().to_owned());
    let moved = move_journals(from, to, own.as_deref());
    if let Some(sitting) = sitting {
        sitting.settle(if moved.is_ok() { to } else { from });
    }
    moved
}

/// The journal of the sitting goes first: if it cannot go, none does.
fn move_journals(from: &Path, to: &Path, own: Option<&Path>) -> Result<(), StoreTrouble> {
    if let Some(own) = own {
        move_one(own, to).map_err(|error| StoreTrouble::new(Doing::MoveJournal, own, &error))?;
    }
    if presence::is_in_use(from) {
        return Ok(());
    }
    // Best effort: a journal that stays is found again as it was, without a name.
    let entries = fs::read_dir(from).into_iter().flatten().flatten();
    let paths: Vec<PathBuf> = entries.map(|entry| entry.path()).collect();
    for path in paths.iter().filter(|path| is_journal(path)) {
        let _ = move_one(path, to);
    }
    Ok(())
}

/// Moves a journal, and beside it what was set aside of it. Nothing is ever written over.
fn move_one(journal: &Path, to: &Path) -> io::Result<()> {
    let place = |path: &Path| Some(to.join(path.file_name()?));
    for path in [journal.to_owned(), journal.with_extension("damaged.txt")] {
        // A sitting that could write nothing yet has no file, and of most nothing is set aside.
        if !path.exists() {
            continue;
        }
        match place(&path) {
            Some(place) if !place.exists() => fs::rename(&path, place)?,
            _ => return Err(io::ErrorKind::AlreadyExists.into()),
        }
    }
    Ok(())
}
