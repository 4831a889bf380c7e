//! The saves folder: the only room with files and the clock.
//!
//! ```text
//! saves/
//!   <learner id>/
//!     learner.json                    the name, which is never part of a path; locked by every
//!                                     program at work for the learner
//!     settings.json                   what the learner has chosen for the display; may be missing
//!     <sitting id>.jsonl              the journal of one sitting; only ever added to
//!     <sitting id>.damaged.txt        lines of it that could not be read
//!     problems/<name>.json            problem files of the learner's own
//!   sample/                           samples; never written to, never listed
//! ```
//! One file per learner and sitting, one writer per file: two programs, or two computers on one
//! shared drive, never add to the same file, for drives in a network do not keep such lines apart.

mod clock;
mod hand_over;
mod history;
mod id;
mod learner;
mod own;
mod presence;
mod saves;
mod settings;
mod sitting;
mod trouble;

pub use clock::now;
pub use history::{Found, History, Note};
pub use learner::{Learner, LearnerName, NameTrouble};
pub use own::NotKept;
pub use saves::{Wishes, data_folder, saves_folder};
pub use settings::UnreadSettings;
pub use sitting::{Flush, Sitting};
pub use trouble::{Cause, Doing, StoreTrouble};

use crate::text::Settings;
use std::path::{Path, PathBuf};

/// An open saves folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Store {
    folder: PathBuf,
}

impl Store {
    /// Opens a saves folder and makes it if it is not there.
    ///
    /// # Errors
    /// The folder cannot be made, or a file stands in its place.
    pub fn open(folder: &Path) -> Result<Store, StoreTrouble> {
        std::fs::create_dir_all(folder)
            .map_err(|error| StoreTrouble::new(Doing::MakeFolder, folder, &error))?;
        Ok(Store {
            folder: folder.to_owned(),
        })
    }

    /// The folder.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Everyone who has a folder here, by name and then by id; samples are left out.
    ///
    /// # Errors
    /// The folder cannot be read.
    pub fn learners(&self) -> Result<Vec<Learner>, StoreTrouble> {
        learner::list(&self.folder)
    }

    /// The learner of a computer on which nobody has given a name. Its folder has the fixed id
    /// `learner`, so that two programs started at once share it.
    ///
    /// # Errors
    /// Its folder cannot be made or written.
    pub fn default_learner(&self) -> Result<Learner, StoreTrouble> {
        learner::default_learner(&self.folder)
    }

    /// Makes a folder for a new learner, under a random id. Two learners may bear one name.
    ///
    /// # Errors
    /// The folder cannot be made or written.
    pub fn add_learner(&self, name: &LearnerName) -> Result<Learner, StoreTrouble> {
        learner::add(&self.folder, name)
    }

    /// The learner whose journal was written last; on a computer without any, that of
    /// [`Store::default_learner`].
    ///
    /// # Errors
    /// As [`Store::learners`] and [`Store::default_learner`].
    pub fn latest_learner(&self) -> Result<Learner, StoreTrouble> {
        match learner::latest(&self.folder)? {
            Some(learner) => Ok(learner),
            None => self.default_learner(),
        }
    }

    /// Gives a learner a name, or another one. A sitting that is open for the learner goes on.
    ///
    /// # Errors
    /// The learner's file cannot be written. The learner keeps the name that was.
    pub fn name_learner(
        &self,
        learner: &Learner,
        name: &LearnerName,
        sitting: Option<&mut Sitting>,
    ) -> Result<Learner, StoreTrouble> {
        hand_over::rename(&self.folder.join(learner.id()), learner, name, sitting)
    }

    /// What a learner has chosen for the display, and the file if it could not be read.
    pub fn settings(&self, learner: &Learner) -> (Option<Settings>, Option<UnreadSettings>) {
        settings::read(&self.folder.join(learner.id()))
    }

    /// Writes down what a learner has chosen.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn keep_settings(&self, learner: &Learner, settings: Settings) -> Result<(), StoreTrouble> {
        settings::write(&self.folder.join(learner.id()), settings)
    }

    /// Gives the records of a learner without a name to another learner. A sitting that is open
    /// goes on there. Where another program is at work for the learner without a name, only the
    /// sitting goes.
    ///
    /// # Errors
    /// A journal cannot be moved; the sitting then is where it was.
    pub fn hand_over(
        &self,
        unnamed: &Learner,
        to: &Learner,
        sitting: Option<&mut Sitting>,
    ) -> Result<(), StoreTrouble> {
        let folder = |learner: &Learner| self.folder.join(learner.id());
        hand_over::hand_over(&folder(unnamed), &folder(to), sitting)
    }

    /// Finds out whether journals can be kept for a learner: a new one is made, written and taken
    /// away again.
    ///
    /// # Errors
    /// Why a journal cannot be made or written there.
    pub fn try_journal(&self, learner: &Learner, now: &str) -> Result<(), StoreTrouble> {
        sitting::try_file(&self.folder.join(learner.id()), now)
    }

    /// Starts a journal for a new sitting, with its first record in it. `now` is RFC 3339 in UTC,
    /// as [`now`] gives it.
    ///
    /// If the file is made but cannot be written, as on a full disk, the sitting begins all the
    /// same: its records wait, and the next [`Sitting::append`] tells.
    ///
    /// # Errors
    /// The journal cannot be made.
    pub fn begin_sitting(
        &self,
        learner: &Learner,
        now: &str,
        flush: Flush,
    ) -> Result<Sitting, StoreTrouble> {
        Sitting::begin(&self.folder.join(learner.id()), learner.id(), now, flush)
    }

    /// Keeps a problem file of a learner's own under a name, and tells where it is.
    ///
    /// # Errors
    /// The name does not fit or is taken, or the file cannot be written.
    pub fn keep_problem(
        &self,
        learner: &Learner,
        name: &str,
        json: &str,
    ) -> Result<PathBuf, NotKept> {
        own::keep(&self.folder.join(learner.id()), name, json)
    }

    /// True if a program has a sitting of a learner open, one of this program included.
    pub fn is_in_use(&self, learner: &Learner) -> bool {
        presence::is_in_use(&self.folder.join(learner.id()))
    }

    /// All journals of a learner, by start and then by id. Lines that cannot be read are set
    /// aside in a file of their own, once; the journals are never changed.
    ///
    /// # Errors
    /// The learner's folder cannot be read. A single file that cannot be read is a note.
    pub fn history(&self, learner: &Learner) -> Result<History, StoreTrouble> {
        history::history(&self.folder.join(learner.id()))
    }

    /// Every problem at which a learner entered a line, over all sittings, the latest first; true
    /// beside one that was finished.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn worked(
        &self,
        learner: &Learner,
    ) -> Result<Vec<(crate::record::Resume, bool)>, StoreTrouble> {
        let history = self.history(learner)?;
        Ok(crate::record::all_worked_over(&history.journals))
    }

    /// The newest problem, over all sittings of a learner, that was opened and not closed.
    ///
    /// # Errors
    /// As [`Store::history`].
    pub fn unfinished(&self, learner: &Learner) -> Result<Found, StoreTrouble> {
        let history = self.history(learner)?;
        let mut left = crate::record::all_unfinished_over(&history.journals).into_iter();
        let mut notes = history.notes;
        let lines = crate::record::lines_without_problem(&history.journals);
        // Told with the damage that it comes from, and as often.
        if lines > 0 && !notes.is_empty() {
            let place = self.folder.join(learner.id());
            notes.push(Note::NoStart { lines, place });
        }
        Ok(Found {
            confirmed: crate::record::confirmed_over(&history.journals),
            work: crate::record::work_over(&history.journals),
            resume: left.next(),
            older: left.collect(),
            notes,
        })
    }
}
