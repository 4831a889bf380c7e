//! What a learner has shown: the records of a journal, read and written as text.
//!
//! A journal is the text of one sitting, one record a line, only ever added to. Everything that
//! a learner enters is a [`Entry::Line`], asking for a hint or going back too, so that entering
//! the lines of a journal again brings the session back exactly. Verdicts stand beside them for
//! teachers and reports; a replay reads them only where lines beside them were damaged.
//!
//! This room knows no files and no clock: `store` hands in the text and the time.

mod checksum;
mod confirmed;
mod file;
mod journal;
mod resume;
mod standing;

pub use confirmed::{confirmed_from, confirmed_over, confirmed_told};
pub use file::FORMAT_VERSION;
pub use journal::{Damage, DamagedLine, Journal, parse};
pub use resume::{
    PastLine, Resume, all_unfinished_over, all_worked_over, lines_without_problem, unfinished,
    unfinished_over,
};
pub use standing::{LessonWork, Standing, work_over};

use std::collections::BTreeMap;
use std::fmt;

/// The name of a record that no other record bears: its sitting and its sequence number.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct RecordId(pub String);

impl RecordId {
    /// The id of record number `sequence` of a sitting.
    pub fn new(sitting: &str, sequence: u64) -> RecordId {
        RecordId(format!("{sitting}-{sequence}"))
    }
}

impl fmt::Display for RecordId {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(&self.0)
    }
}

/// One record of a journal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// Its name, which no other record bears.
    pub id: RecordId,
    /// Its place in its sitting, from 1. Records are ordered by it, never by the clock.
    pub sequence: u64,
    /// When it was made: RFC 3339, in UTC, as handed in.
    pub at: String,
    /// What it tells.
    pub entry: Entry,
}

impl Record {
    /// The record as one line of a journal, with its checksum, without the line's end.
    pub fn to_line(&self) -> String {
        file::write(self)
    }
}

/// What a record tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Entry {
    /// A sitting began. First in every journal.
    Sitting(Beginning),
    /// A problem was put before the learner.
    Opened(Box<Opened>),
    /// The learner entered a line.
    Line(Line),
    /// The tutor answered a line.
    Verdict(Verdict),
    /// A problem was finished or left.
    Closed(Closed),
    /// A kind of record that this version does not know; it is passed over and stays in the file.
    Other(OtherEntry),
}

/// The beginning of a sitting.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Beginning {
    /// Id of the sitting, which also names its file.
    pub sitting: String,
    /// Id of the learner; never the name.
    pub learner: String,
    /// Version of the program that wrote the journal.
    pub program_version: String,
}

/// A problem that was put before the learner.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// The problem as JSON text. It is nested in the record as a value; text that is no JSON is
    /// kept as it is.
    pub problem_json: String,
    /// The lesson that it was drawn from; none for a problem of the user's own.
    pub origin: Option<Origin>,
    /// The options that the session runs under, by name.
    pub options: BTreeMap<String, String>,
    /// If this takes up a problem left open earlier: the id of the record that opened it then.
    pub continues: Option<RecordId>,
}

/// Where a problem was drawn from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Origin {
    /// The problem's code.
    pub code: String,
    /// Id of the lesson.
    pub lesson: String,
    /// Version of the lesson.
    pub lesson_version: u32,
    /// Seed that the numbers were drawn with.
    pub seed: u64,
}

/// A line that the learner entered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// The record that opened the problem which the line was entered for; none outside a problem.
    pub problem: Option<RecordId>,
    /// The text, exactly as entered.
    pub text: String,
}

/// What the tutor answered. Plain words rather than the judge's types, so that old journals can
/// be read after the judge has changed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Verdict {
    /// The record of the line that is answered.
    pub line: RecordId,
    /// The word for its truth; empty if the line was not working but an order, such as a hint.
    pub truth: String,
    /// Ids of the steps that it established.
    pub progress: Vec<String>,
    /// Ids of the mistakes that may explain it, the likeliest first.
    pub mistakes: Vec<String>,
    /// Ids of the mistakes named of earlier lines that the line has put right.
    pub confirmed: Vec<String>,
    /// The stage of the hint that was shown with it, from 1.
    pub hint: Option<u8>,
    /// The message as shown.
    pub message: String,
}

/// The end of the work on a problem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Closed {
    /// The record that opened the problem, in this sitting or in an earlier one.
    pub problem: RecordId,
    /// How it ended.
    pub ending: Ending,
}

/// How the work on a problem ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// Everything asked was found.
    Finished,
    /// The learner went on to something else. Stopping the program is no ending: the problem
    /// stays open and is offered again.
    Left,
}

/// A record of a kind that this version does not know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OtherEntry {
    /// The format version that it bears.
    pub version: u32,
    /// Its kind.
    pub kind: String,
    /// The whole record as JSON text.
    pub json: String,
}

impl Default for RecordId {
    /// The id of no record.
    fn default() -> RecordId {
        RecordId(String::new())
    }
}
