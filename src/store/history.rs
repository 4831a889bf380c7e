//! Reading the journals of a learner, and setting aside what cannot be read.

use super::learner::is_journal;
use super::trouble::{Doing, StoreTrouble};
use crate::record::{DamagedLine, Journal, LessonWork, Resume, parse};
use crate::text::{Prose, Slot, Words};
use std::collections::BTreeMap;
use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// All journals of a learner.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct History {
    /// One per sitting, by start and then by id; those without a whole record are left out.
    pub journals: Vec<Journal>,
    /// What the learner should be told about the files, once.
    pub notes: Vec<Note>,
}

/// What a learner left open.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Found {
    /// The newest problem that was opened and not closed.
    pub resume: Option<Resume>,
    /// Those opened before it and not closed either, the latest first.
    pub older: Vec<Resume>,
    /// How often the learner has confirmed each mistake by putting its line right.
    pub confirmed: BTreeMap<String, u32>,
    /// What was done at each lesson at which a line was entered, by the lesson's id.
    pub work: BTreeMap<String, LessonWork>,
    /// What the learner should be told about the files, once.
    pub notes: Vec<Note>,
}

/// Something about the files that the learner should be told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Note {
    /// Lines that could not be read were set aside, for the first time.
    SetAside {
        /// How many.
        lines: usize,
        /// The file that holds them now.
        place: PathBuf,
    },
    /// Lines could not be read, and could not be set aside either; they still stand in the
    /// journal.
    NotSetAside {
        /// How many.
        lines: usize,
        /// The journal.
        place: PathBuf,
    },
    /// Lines that belong to a problem whose start was among what could not be read.
    NoStart {
        /// How many.
        lines: usize,
        /// The folder that keeps them.
        place: PathBuf,
    },
    /// A journal could not be read at all.
    Unreadable {
        /// The journal.
        place: PathBuf,
        /// Why, in the words of the operating system.
        system: String,
    },
}

impl Note {
    /// The note for the learner.
    pub fn say(&self, words: &Words) -> Prose {
        let place = |place: &Path| ("place", Slot::Value(place.display().to_string()));
        let told = |key: &str, lines: usize, path: &Path| {
            let number = if lines == 1 { "one" } else { "many" };
            let count = ("count", Slot::Word(lines.to_string()));
            words.say(&format!("{key}.{number}"), &[count, place(path)])
        };
        match self {
            Note::SetAside { lines, place } => told("store.note.set_aside", *lines, place),
            Note::NoStart { lines, place } => told("store.note.no_start", *lines, place),
            Note::NotSetAside { lines, place } => told("store.note.not_set_aside", *lines, place),
            Note::Unreadable {
                place: path,
                system,
            } => {
                let system = ("system", Slot::Word(system.clone()));
                words.say("store.note.unreadable", &[place(path), system])
            }
        }
    }
}

pub(super) fn history(folder: &Path) -> Result<History, StoreTrouble> {
    let mut history = History::default();
    for path in journal_files(folder)? {
        match read(&path) {
            // Bytes that are no text break the checksum of their line, and of no other.
            Ok(bytes) => take(&mut history, &path, parse(&String::from_utf8_lossy(&bytes))),
            Err(error) => history.notes.push(Note::Unreadable {
                place: path,
                system: error.to_string(),
            }),
        }
    }
    history.journals.sort_by(|a, b| a.start().cmp(&b.start()));
    Ok(history)
}

/// The bytes of a file. A pipe of that name would keep the program waiting for ever.
fn read(path: &Path) -> io::Result<Vec<u8>> {
    let found = fs::metadata(path)?;
    if found.is_file() || found.is_dir() {
        return fs::read(path);
    }
    Err(io::Error::other("it is neither a file nor a folder"))
}

/// The journals in a folder, by name, so that notes come in a steady order.
fn journal_files(folder: &Path) -> Result<Vec<PathBuf>, StoreTrouble> {
    let list = || -> io::Result<Vec<PathBuf>> {
        let paths = fs::read_dir(folder)?.map(|entry| Ok(entry?.path()));
        paths.collect()
    };
    let mut paths = list().map_err(|error| StoreTrouble::new(Doing::ReadFolder, folder, &error))?;
    paths.retain(|path| is_journal(path));
    paths.sort();
    Ok(paths)
}

fn take(history: &mut History, path: &Path, journal: Journal) {
    if !journal.damaged.is_empty() {
        let place = path.with_extension("damaged.txt");
        match set_aside(&place, &journal.damaged) {
            Ok(0) => {}
            Ok(lines) => history.notes.push(Note::SetAside { lines, place }),
            Err(_) => history.notes.push(Note::NotSetAside {
                lines: journal.damaged.len(),
                place: path.to_owned(),
            }),
        }
    }
    if !journal.records.is_empty() {
        history.journals.push(journal);
    }
}

/// Adds the damaged lines that are not there yet; tells how many those were.
fn set_aside(place: &Path, damaged: &[DamagedLine]) -> io::Result<usize> {
    let present = match fs::read_to_string(place) {
        Ok(text) => text,
        Err(error) if error.kind() == io::ErrorKind::NotFound => String::new(),
        Err(error) => return Err(error),
    };
    let told = damaged.iter().map(|line| {
        let why = line.why.words_key().rsplit('.').next().unwrap_or_default();
        format!("{}\t{why}\t{}", line.line_number, line.text)
    });
    let new: Vec<String> = told
        .filter(|told| !present.split('\n').any(|line| line == told))
        .collect();
    if !new.is_empty() {
        let mut file = OpenOptions::new().append(true).create(true).open(place)?;
        let length = file.metadata()?.len();
        let gap = if present.is_empty() || present.ends_with('\n') {
            ""
        } else {
            "\n"
        };
        let written = file.write_all(format!("{gap}{}\n", new.join("\n")).as_bytes());
        if let Err(error) = written {
            // Half of it would be set aside again at every start; best effort.
            let _ = match length {
                0 => fs::remove_file(place),
                _ => file.set_len(length),
            };
            return Err(error);
        }
    }
    Ok(new.len())
}
