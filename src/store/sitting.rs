//! The journal of the sitting that is going on.

use super::id;
use super::presence::Presence;
use super::trouble::{Doing, StoreTrouble};
use crate::record::{Beginning, Entry, Record, RecordId};
use std::collections::btree_map::Entry::Vacant;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// How often a new id is drawn if the one drawn is taken.
const DRAWS: usize = 16;

/// How far a record is on its way when [`Sitting::append`] comes back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Flush {
    /// On the disk: it outlives a loss of power. For learners.
    ToDisk,
    /// With the operating system: it outlives the program only. To measure what flushing costs.
    ToSystem,
}

/// What a journal is written to.
trait Sink: Write + Send {
    /// Waits until everything written is on the disk.
    fn flush_to_disk(&mut self) -> io::Result<()>;
}

impl Sink for File {
    fn flush_to_disk(&mut self) -> io::Result<()> {
        self.sync_data()
    }
}

/// The journal of the sitting that is going on, and its only writer.
///
/// No record is ever lost to a failing disk while the program runs: what could not be written is
/// kept, and written in its place with the next record or by [`Sitting::retry`].
pub struct Sitting {
    id: String,
    path: PathBuf,
    flush: Flush,
    sink: Option<Box<dyn Sink>>,
    numbered: u64,
    lines: BTreeMap<u64, String>,
    unsaved: BTreeSet<u64>,
    presence: Presence,
}

impl Sitting {
    /// Makes the file of a new sitting. If its first record cannot be written, it waits like any
    /// other.
    pub(super) fn begin(
        folder: &Path,
        learner: &str,
        now: &str,
        flush: Flush,
    ) -> Result<Sitting, StoreTrouble> {
        let (id, path, file) = make_file(folder, now)?;
        let mut sitting = Sitting {
            id,
            path,
            flush,
            sink: Some(Box::new(file)),
            numbered: 0,
            lines: BTreeMap::new(),
            unsaved: BTreeSet::new(),
            presence: Presence::begin(folder),
        };
        let beginning = Entry::Sitting(Beginning {
            sitting: sitting.id.clone(),
            learner: learner.to_owned(),
            program_version: env!("CARGO_PKG_VERSION").to_owned(),
        });
        let record = sitting.number(now, beginning);
        // A disk that is full now may have room later: the sitting goes on, its records wait, and
        // the next append tells the trouble.
        let _ = sitting.append(record);
        if flush == Flush::ToDisk {
            // Keeps the file's name through a loss of power; some systems cannot flush a folder.
            let _ = File::open(folder).and_then(|folder| folder.sync_all());
        }
        Ok(sitting)
    }

    /// The id of the sitting, which also names its file.
    pub fn id(&self) -> &str {
        &self.id
    }

    /// True if another program was at work for the same learner when this sitting began.
    pub fn joined_others(&self) -> bool {
        self.presence.joined_others
    }

    /// Takes the mark of this program off the learner's file, which is written or left now.
    pub(super) fn step_aside(&mut self) {
        self.presence = Presence::none();
    }

    /// Marks this program as at work in a folder, where the journal is from now on.
    pub(super) fn settle(&mut self, folder: &Path) {
        self.presence = Presence::begin(folder);
        if let Some(name) = self.path.file_name() {
            let path = folder.join(name);
            if path != self.path {
                self.path = path;
                // The file is opened anew in its new place.
                self.sink = None;
            }
        }
    }

    /// The file of the journal.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Makes the next record of this sitting, numbered and named, and does not write it yet. `at`
    /// is RFC 3339 in UTC, as [`super::now`] gives it.
    pub fn number(&mut self, at: &str, entry: Entry) -> Record {
        self.numbered += 1;
        Record {
            id: RecordId::new(&self.id, self.numbered),
            sequence: self.numbered,
            at: at.to_owned(),
            entry,
        }
    }

    /// Writes a record, and before it any that could not be written earlier; all are on the disk
    /// when this returns. The same record may be given again after a failure: it counts once.
    ///
    /// # Errors
    /// The journal cannot be written. The record is kept for the next time.
    pub fn append(&mut self, record: Record) -> Result<(), StoreTrouble> {
        let sequence = record.sequence;
        if let Vacant(place) = self.lines.entry(sequence) {
            place.insert(record.to_line());
            self.unsaved.insert(sequence);
        }
        self.retry()
    }

    /// Writes what could not be written earlier.
    ///
    /// # Errors
    /// The journal still cannot be written.
    pub fn retry(&mut self) -> Result<(), StoreTrouble> {
        if self.unsaved.is_empty() {
            return Ok(());
        }
        match self.write_unsaved() {
            Ok(()) => {
                self.unsaved.clear();
                Ok(())
            }
            Err(error) => {
                // The file may now end in half a line, and after a failed flush nobody knows
                // what is on the disk: it is opened anew next time.
                self.sink = None;
                self.take_away_if_empty();
                Err(StoreTrouble::new(Doing::Append, &self.path, &error))
            }
        }
    }

    /// An empty file tells nobody anything; it is made again when there is something to write.
    fn take_away_if_empty(&self) {
        if fs::metadata(&self.path).is_ok_and(|found| found.is_file() && found.len() == 0) {
            // Best effort: a file that cannot be taken away does no harm.
            let _ = fs::remove_file(&self.path);
        }
    }

    /// How many records are kept that could not be written yet.
    pub fn unsaved(&self) -> usize {
        self.unsaved.len()
    }

    fn write_unsaved(&mut self) -> io::Result<()> {
        // A file that was deleted, or a drive that was pulled out, takes writes without a word.
        // The same holds where something else has taken its place.
        let is_there = match fs::metadata(&self.path) {
            Ok(found) => found.is_file(),
            Err(error) if error.kind() == io::ErrorKind::NotFound => false,
            Err(error) => return Err(error),
        };
        let mut text = String::new();
        let sink = match &mut self.sink {
            Some(sink) if is_there => sink,
            lost => {
                let file = if is_there {
                    // A line's end first, so that half a line stays on a line of its own.
                    text.push('\n');
                    OpenOptions::new().append(true).open(&self.path)?
                } else {
                    let file = OpenOptions::new()
                        .append(true)
                        .create_new(true)
                        .open(&self.path)?;
                    self.unsaved.extend(self.lines.keys());
                    file
                };
                lost.insert(Box::new(file))
            }
        };
        for line in self.unsaved.iter().filter_map(|n| self.lines.get(n)) {
            text.push_str(line);
            text.push('\n');
        }
        sink.write_all(text.as_bytes())?;
        match self.flush {
            Flush::ToDisk => sink.flush_to_disk(),
            Flush::ToSystem => sink.flush(),
        }
    }
}

impl fmt::Debug for Sitting {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter
            .debug_struct("Sitting")
            .field("path", &self.path)
            .field("flush", &self.flush)
            .field("records", &self.lines.len())
            .field("unsaved", &self.unsaved.len())
            .finish_non_exhaustive()
    }
}

/// A file that nobody else has, under a new id.
fn make_file(folder: &Path, now: &str) -> Result<(String, PathBuf, File), StoreTrouble> {
    let mut draw = 1;
    loop {
        let id = id::of_sitting(now);
        let path = folder.join(format!("{id}.jsonl"));
        let mut options = OpenOptions::new();
        match options.append(true).create_new(true).open(&path) {
            Ok(file) => return Ok((id, path, file)),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists && draw < DRAWS => draw += 1,
            Err(error) => return Err(StoreTrouble::new(Doing::StartJournal, &path, &error)),
        }
    }
}

/// Makes the file of a sitting, writes to it and takes it away again.
pub(super) fn try_file(folder: &Path, now: &str) -> Result<(), StoreTrouble> {
    let (_, path, mut file) = make_file(folder, now)?;
    let written = file.write_all(b"\n").and_then(|()| file.sync_data());
    drop(file);
    // Best effort: an empty journal tells nobody anything.
    let _ = fs::remove_file(&path);
    written.map_err(|error| StoreTrouble::new(Doing::Append, &path, &error))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::record::{Journal, Line, parse};
    use crate::store::Cause;

    const NOW: &str = "2026-11-25T09:00:00.000Z";

    /// Writes the first bytes of a text and then fails, like a disk that fills up.
    struct Stumbling {
        file: File,
        room: usize,
        error: io::ErrorKind,
    }

    impl Write for Stumbling {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            if self.room == 0 {
                return Err(self.error.into());
            }
            let written = self.file.write(&bytes[..bytes.len().min(self.room)])?;
            self.room -= written;
            Ok(written)
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    impl Sink for Stumbling {
        fn flush_to_disk(&mut self) -> io::Result<()> {
            Err(self.error.into())
        }
    }

    fn line(text: &str) -> Entry {
        Entry::Line(Line {
            problem: None,
            text: text.to_owned(),
        })
    }

    fn texts(journal: &Journal) -> Vec<String> {
        let text = |record: &'_ Record| match &record.entry {
            Entry::Line(line) => Some(line.text.clone()),
            _ => None,
        };
        journal.records.iter().filter_map(text).collect()
    }

    fn read(sitting: &Sitting) -> Journal {
        // A character may be cut in two where a write stopped.
        parse(&String::from_utf8_lossy(
            &std::fs::read(&sitting.path).unwrap(),
        ))
    }

    /// A sitting whose next write stops after `room` bytes.
    fn stumbling(folder: &Path, room: usize) -> Sitting {
        let mut sitting = Sitting::begin(folder, "learner", NOW, Flush::ToDisk).unwrap();
        sitting.sink = Some(Box::new(Stumbling {
            file: OpenOptions::new().append(true).open(&sitting.path).unwrap(),
            room,
            error: io::ErrorKind::StorageFull,
        }));
        sitting
    }

    #[test]
    fn verif_a_write_that_stops_at_any_byte_loses_no_line_and_glues_none() {
        let folder = tempfile::tempdir().unwrap();
        for room in 0..400 {
            let mut sitting = stumbling(folder.path(), room);
            let first = sitting.number(NOW, line("first ½ R"));
            let trouble = sitting.append(first.clone()).unwrap_err();
            assert_eq!(trouble.cause, Cause::DiskFull);
            assert_eq!(sitting.unsaved(), 1);
            let second = sitting.number(NOW, line("second"));
            sitting.append(second).unwrap();
            sitting.append(first).unwrap();
            assert_eq!(sitting.unsaved(), 0);
            let journal = read(&sitting);
            assert_eq!(texts(&journal), ["first ½ R", "second"], "room {room}");
            assert_eq!(journal.damaged, [], "room {room}");
        }
    }

    #[test]
    fn verif_a_sitting_that_wrote_nothing_leaves_no_file_and_one_takes_it_all_later() {
        let folder = tempfile::tempdir().unwrap();
        let mut sitting = Sitting::begin(folder.path(), "learner", NOW, Flush::ToDisk).unwrap();
        // As if the very first write had failed.
        OpenOptions::new()
            .write(true)
            .truncate(true)
            .open(&sitting.path)
            .unwrap();
        sitting.unsaved.extend(sitting.lines.keys());
        for number in 1..4 {
            sitting.sink = Some(Box::new(Stumbling {
                file: OpenOptions::new()
                    .append(true)
                    .create(true)
                    .open(&sitting.path)
                    .unwrap(),
                room: 0,
                error: io::ErrorKind::StorageFull,
            }));
            let record = sitting.number(NOW, line(&format!("line {number}")));
            assert!(sitting.append(record).is_err());
            assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
        }
        sitting.retry().unwrap();
        let journal = read(&sitting);
        assert_eq!(texts(&journal), ["line 1", "line 2", "line 3"]);
        assert!(journal.beginning().is_some() && journal.damaged.is_empty());
        assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn verif_a_deleted_journal_is_written_anew_in_full() {
        let folder = tempfile::tempdir().unwrap();
        let mut sitting = Sitting::begin(folder.path(), "learner", NOW, Flush::ToDisk).unwrap();
        let first = sitting.number(NOW, line("first"));
        sitting.append(first).unwrap();
        std::fs::remove_file(&sitting.path).unwrap();
        let second = sitting.number(NOW, line("second"));
        sitting.append(second).unwrap();
        let journal = read(&sitting);
        assert_eq!(texts(&journal), ["first", "second"]);
        assert!(journal.beginning().is_some() && journal.damaged.is_empty());
    }

    #[test]
    #[cfg(target_os = "linux")]
    fn val_a_disk_that_linux_reports_full_is_told_as_full() {
        // The device /dev/full fails every write with ENOSPC (Linux manual, full(4)).
        let folder = tempfile::tempdir().unwrap();
        let mut sitting = Sitting::begin(folder.path(), "learner", NOW, Flush::ToDisk).unwrap();
        let full = OpenOptions::new().append(true).open("/dev/full").unwrap();
        sitting.sink = Some(Box::new(full));
        let record = sitting.number(NOW, line("T = 3 N"));
        let trouble = sitting.append(record).unwrap_err();
        assert_eq!(trouble.cause, Cause::DiskFull);
        sitting.retry().unwrap();
        let journal = read(&sitting);
        assert_eq!(texts(&journal), ["T = 3 N"]);
    }
}
