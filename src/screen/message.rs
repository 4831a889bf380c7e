//! What may happen to the screen, and what it may ask for.

use super::keys::Command;
use crate::practice::{Again, Earlier, LessonChoice, Opening, Resumable};
use crate::problem::Problem;
use crate::session::{Fading, Turn};
use crate::text::{Prose, Settings};

/// Something that happened.
pub(super) enum Message {
    /// A key of the key table.
    Pressed(Command),
    /// A character to type.
    Typed(char),
    /// Characters that waited together.
    TypedTogether(String),
    /// A text was pasted.
    Pasted(String),
    /// The terminal has this many columns and rows now.
    Resized(u16, u16),
    /// The lessons are here.
    Listed {
        /// All lessons.
        lessons: Vec<LessonChoice>,
        /// What was left unfinished.
        unfinished: Option<Resumable>,
        /// What was left before that.
        older: Vec<Resumable>,
    },
    /// A problem was opened, or could not be.
    Opened(Result<Opening, Prose>),
    /// The problems that were worked at before.
    Earlier(Vec<Earlier>),
    /// One of them is looked at again, or cannot be.
    Again(Result<Again, Prose>),
    /// A line was written down and is to be judged.
    Entered {
        /// The line.
        line: String,
        /// What went wrong when it was written.
        notes: Vec<Prose>,
    },
    /// What was chosen was written down.
    Settled {
        /// What went wrong when it was written.
        notes: Vec<Prose>,
    },
    /// What the desk says to a name.
    Called(Result<Prose, Prose>),
    /// What the desk says to a problem that is to be kept as a file.
    KeptOwn(Result<Prose, Prose>),
    /// The verdict was written down.
    Judged {
        /// What went wrong when it was written.
        notes: Vec<Prose>,
    },
}

/// What the outside is asked to do.
pub(super) enum Effect {
    /// Write this line down, then come back with [`Message::Entered`].
    Enter(String),
    /// Write this verdict down, then come back with [`Message::Judged`].
    Judge(Box<Turn>),
    /// The learner has chosen for the display; then come back with [`Message::Settled`].
    Settle(Settings),
    /// Take this name, or the number of somebody known; then come back with [`Message::Called`].
    Call(String),
    /// Open a problem, then come back with [`Message::Opened`].
    Open(Choice),
    /// List the problems that were worked at before, then come back with [`Message::Earlier`].
    Earlier,
    /// Look at one of them again, by its place, then come back with [`Message::Again`].
    LookAgain(usize),
    /// Open a problem that the learner has built, then come back with [`Message::Opened`].
    OpenOwn(Box<Problem>),
    /// Keep one as a file of this name, then come back with [`Message::KeptOwn`].
    Keep(Box<Problem>, String),
    /// Do not offer the unfinished problem again, then come back with [`Message::Listed`].
    PutAway,
    /// Leave the problem for a fresh one of this lesson, taken so, then come back with
    /// [`Message::Opened`].
    Again(usize, Fading),
    /// Leave the problem, then come back with [`Message::Listed`].
    List,
    /// Draw the whole screen anew.
    Redraw,
    /// Give the terminal back and stop, until the system lets the program go on.
    Suspend,
    /// End the program.
    Leave,
}

/// What to open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Choice {
    /// A problem that was left before the last one, by its place.
    Older(usize),
    /// The problem that was left unfinished.
    Unfinished,
    /// A fresh problem of a lesson, taken so.
    Lesson(usize, Fading),
}
