//! Who has a folder in the saves folder.

use super::id;
use super::trouble::{Doing, StoreTrouble};
use crate::text::{Prose, Slot, Words};
use serde::{Deserialize, Serialize};
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

/// The folder of the learner of a computer on which nobody has given a name.
const DEFAULT_ID: &str = "learner";

/// The folder of the samples, which is no learner's.
const SAMPLE: &str = "sample";

/// The file that tells who a learner is.
pub(super) const LEARNER_FILE: &str = "learner.json";

/// Longest name, in characters.
const LONGEST_NAME: usize = 80;

/// How often a new id is drawn if the one drawn is taken.
const DRAWS: usize = 16;

/// A learner who has a folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Learner {
    id: String,
    name: Option<LearnerName>,
}

impl Learner {
    /// The id: letters, digits and hyphens. Journals bear it in place of the name.
    pub fn id(&self) -> &str {
        &self.id
    }

    /// The name, if one was given and can be read.
    pub fn name(&self) -> Option<&LearnerName> {
        self.name.as_ref()
    }
}

/// A learner's name: 1 to 80 characters of any script, not only blanks.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct LearnerName(String);

/// Why a text is no learner's name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NameTrouble {
    /// It is empty or blank.
    Empty,
    /// It is longer than 80 characters.
    TooLong {
        /// How many characters it has.
        characters: usize,
    },
}

impl LearnerName {
    /// A name, without the blanks around it.
    ///
    /// # Errors
    /// It is blank or has more than 80 characters.
    pub fn new(text: &str) -> Result<LearnerName, NameTrouble> {
        let text = text.trim();
        match text.chars().count() {
            0 => Err(NameTrouble::Empty),
            characters if characters > LONGEST_NAME => Err(NameTrouble::TooLong { characters }),
            _ => Ok(LearnerName(text.to_owned())),
        }
    }

    /// The name exactly as given.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// The name for a terminal: a control character could move the cursor or worse, so each is
    /// shown as a replacement character.
    pub fn shown(&self) -> String {
        let visible = |character: char| match character {
            control if control.is_control() => char::REPLACEMENT_CHARACTER,
            other => other,
        };
        self.0.chars().map(visible).collect()
    }
}

impl NameTrouble {
    /// What is wrong with the name, for the learner.
    pub fn say(&self, words: &Words) -> Prose {
        match self {
            NameTrouble::Empty => words.say("store.name.empty", &[]),
            NameTrouble::TooLong { characters } => {
                let characters = Slot::Word(characters.to_string());
                words.say("store.name.too_long", &[("characters", characters)])
            }
        }
    }
}

#[derive(Serialize, Deserialize)]
struct LearnerShape {
    version: u32,
    name: Option<String>,
}

pub(super) fn list(saves: &Path) -> Result<Vec<Learner>, StoreTrouble> {
    let trouble = |error: io::Error| StoreTrouble::new(Doing::ReadFolder, saves, &error);
    let mut learners = Vec::new();
    for entry in fs::read_dir(saves).map_err(trouble)? {
        let entry = entry.map_err(trouble)?;
        let Ok(id) = entry.file_name().into_string() else {
            continue;
        };
        if id != SAMPLE && id::is_id(&id) && is_learner(&entry.path()) {
            let name = name(&entry.path());
            learners.push(Learner { id, name });
        }
    }
    learners.sort_by(|a, b| (&a.name, &a.id).cmp(&(&b.name, &b.id)));
    Ok(learners)
}

/// A folder is a learner's even if who it is cannot be read, so that no journal is hidden.
fn is_learner(folder: &Path) -> bool {
    let journals = || {
        let entries = fs::read_dir(folder).into_iter().flatten().flatten();
        entries
            .map(|entry| entry.path())
            .any(|path| is_journal(&path))
    };
    folder.is_dir() && (folder.join(LEARNER_FILE).is_file() || journals())
}

pub(super) fn is_journal(path: &Path) -> bool {
    path.extension()
        .is_some_and(|extension| extension == "jsonl")
}

fn name(folder: &Path) -> Option<LearnerName> {
    let path = folder.join(LEARNER_FILE);
    // A pipe of that name would keep the program waiting for ever.
    let text = path.is_file().then(|| fs::read_to_string(path).ok())??;
    let shape: LearnerShape = serde_json::from_str(&text).ok()?;
    LearnerName::new(&shape.name?).ok()
}

/// The learner whose journal was written last, by the clock of the file system.
pub(super) fn latest(saves: &Path) -> Result<Option<Learner>, StoreTrouble> {
    let written = |learner: &Learner| {
        let entries = fs::read_dir(saves.join(&learner.id)).into_iter().flatten();
        let paths = entries.flatten().map(|entry| entry.path());
        let journals = paths.filter(|path| is_journal(path));
        journals
            .filter_map(|path| fs::metadata(path).ok()?.modified().ok())
            .max()
    };
    let learners = list(saves)?.into_iter();
    let at_work = learners.filter_map(|learner| Some((written(&learner)?, learner)));
    let last = at_work.max_by(|(one, _), (other, _)| one.cmp(other));
    Ok(last.map(|(_, learner)| learner))
}

pub(super) fn default_learner(saves: &Path) -> Result<Learner, StoreTrouble> {
    let folder = saves.join(DEFAULT_ID);
    fs::create_dir_all(&folder)
        .map_err(|error| StoreTrouble::new(Doing::MakeFolder, &folder, &error))?;
    if !folder.join(LEARNER_FILE).exists() {
        write(&folder, None)?;
    }
    Ok(Learner {
        id: DEFAULT_ID.to_owned(),
        name: name(&folder),
    })
}

pub(super) fn add(saves: &Path, learner_name: &LearnerName) -> Result<Learner, StoreTrouble> {
    let mut draw = 1;
    let id = loop {
        let id = id::random();
        let folder = saves.join(&id);
        match fs::create_dir(&folder) {
            Ok(()) => {
                write(&folder, Some(learner_name))?;
                break id;
            }
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists && draw < DRAWS => draw += 1,
            Err(error) => return Err(StoreTrouble::new(Doing::MakeFolder, &folder, &error)),
        }
    };
    Ok(Learner {
        id,
        name: Some(learner_name.clone()),
    })
}

/// Gives a learner a name.
pub(super) fn rename(
    folder: &Path,
    learner: &Learner,
    name: &LearnerName,
) -> Result<Learner, StoreTrouble> {
    write(folder, Some(name))?;
    Ok(Learner {
        id: learner.id.clone(),
        name: Some(name.clone()),
    })
}

fn write(folder: &Path, name: Option<&LearnerName>) -> Result<(), StoreTrouble> {
    let shape = LearnerShape {
        version: 1,
        name: name.map(|name| name.0.clone()),
    };
    let text = serde_json::to_string(&shape).unwrap_or_default() + "\n";
    write_whole(folder, LEARNER_FILE, &text)
        .map_err(|error| StoreTrouble::new(Doing::WriteLearner, &folder.join(LEARNER_FILE), &error))
}

/// Writes under another name and renames, so that a half-written file is never read.
pub(super) fn write_whole(folder: &Path, name: &str, text: &str) -> io::Result<()> {
    let passing = folder.join(format!("{name}.{}", id::random()));
    let written = File::create_new(&passing)
        .and_then(|mut file| {
            file.write_all(text.as_bytes())
                .and_then(|()| file.sync_all())
        })
        .and_then(|()| fs::rename(&passing, folder.join(name)));
    if written.is_err() {
        // Best effort: nothing more can be done if it cannot be taken away either.
        let _ = fs::remove_file(&passing);
    }
    written
}
