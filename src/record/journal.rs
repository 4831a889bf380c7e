//! A journal read back: the records that are whole, and the lines that are not.

use super::{Beginning, Entry, Record, file};
use std::collections::BTreeSet;

/// What an editor may leave around a line.
const BLANKS: [char; 3] = [' ', '\t', '\r'];

/// A journal as read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Journal {
    /// The whole records, by sequence number.
    pub records: Vec<Record>,
    /// The lines that could not be read, in the order of the file.
    pub damaged: Vec<DamagedLine>,
}

/// A line of a journal that could not be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DamagedLine {
    /// Its place in the file, from 1.
    pub line_number: usize,
    /// Its text.
    pub text: String,
    /// What is wrong with it.
    pub why: Damage,
}

/// What is wrong with a line of a journal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Damage {
    /// It stops before its end: the program or the computer stopped while it was written.
    Torn,
    /// Its text is not the text that was written.
    WrongChecksum,
    /// It does not have the form of a record.
    NotARecord,
    /// It is a record of a known kind in which something is missing or of the wrong sort.
    Incomplete {
        /// The parser's words for it.
        missing: String,
    },
}

impl Damage {
    /// The key under which the catalogue of words tells of it.
    pub fn words_key(&self) -> &'static str {
        match self {
            Damage::Torn => "record.damage.torn",
            Damage::WrongChecksum => "record.damage.wrong_checksum",
            Damage::NotARecord => "record.damage.not_a_record",
            Damage::Incomplete { .. } => "record.damage.incomplete",
        }
    }
}

impl Journal {
    /// How the sitting began, if that record is whole.
    pub fn beginning(&self) -> Option<&Beginning> {
        self.records.iter().find_map(|record| match &record.entry {
            Entry::Sitting(beginning) => Some(beginning),
            _ => None,
        })
    }

    /// What sittings are put in order by: the time of the first whole record, then its id.
    pub fn start(&self) -> (&str, &str) {
        match self.records.first() {
            Some(record) => (&record.at, &record.id.0),
            None => ("", ""),
        }
    }
}

/// Reads the text of a journal. Never fails: what cannot be read is set aside, line by line.
///
/// A record that was written twice, because a disk reported a failure too late, counts once; half
/// a record with the whole of it on the next line is what a second attempt leaves, and no damage.
pub fn parse(text: &str) -> Journal {
    let mut journal = Journal::default();
    let mut seen = BTreeSet::new();
    let mut half: Option<&str> = None;
    // An editor may have put a byte order mark before the first line.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    for (index, line) in text.split('\n').enumerate() {
        for piece in pieces(line.trim_matches(BLANKS)) {
            match file::read(piece) {
                Ok(record) => {
                    // Another record would be missing between these two.
                    let last = journal.records.last().map(|last: &Record| last.sequence);
                    let next = last.is_none_or(|last| record.sequence <= last + 1);
                    if half
                        .take()
                        .is_some_and(|half| next && !half.is_empty() && piece.starts_with(half))
                    {
                        journal.damaged.pop();
                    }
                    if seen.insert(piece) {
                        journal.records.push(record);
                    }
                }
                Err(why) => {
                    // A character that was cut in two was replaced when the file was read.
                    half = Some(piece.trim_end_matches(char::REPLACEMENT_CHARACTER));
                    journal.damaged.push(DamagedLine {
                        line_number: index + 1,
                        text: piece.to_owned(),
                        why,
                    });
                }
            }
        }
    }
    // A stable sort: if two records claim one place, both stay, in the order of the file.
    journal.records.sort_by_key(|record| record.sequence);
    journal
}

/// The line itself if it is whole, else its parts that begin like a record: a whole record that
/// stands behind a torn one on the same line is not lost.
fn pieces(line: &str) -> Vec<&str> {
    if line.is_empty() || file::read(line).is_ok() {
        return Vec::from_iter((!line.is_empty()).then_some(line));
    }
    let mut pieces = Vec::new();
    let mut start = 0;
    for (at, _) in line.match_indices(file::OPENING).filter(|(at, _)| *at > 0) {
        pieces.push(line[start..at].trim_end_matches(BLANKS));
        start = at;
    }
    pieces.push(&line[start..]);
    pieces
}
