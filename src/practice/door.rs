//! What a way of working is given by its caller, and what it asks of it.

use crate::problem::Problem;
use crate::session::{Session, Turn, View};
use crate::text::{Prose, Words};

/// A session as the screen and the dialogue see it.
pub trait Tutor {
    /// Judges a line. It has been written to disk before, see [`Desk::entered`].
    fn submit(&mut self, line: &str) -> Turn;

    /// Everything there is to show.
    fn view(&self) -> View;

    /// How the line being typed would be read, in mathematical layout, without its value.
    fn preview(&self, line: &str) -> Option<String>;

    /// The problem, for the diagram.
    fn problem(&self) -> &Problem;
}

impl Tutor for Session {
    fn submit(&mut self, line: &str) -> Turn {
        Session::submit(self, line)
    }

    fn view(&self) -> View {
        Session::view(self)
    }

    fn preview(&self, line: &str) -> Option<String> {
        Session::preview(self, line)
    }

    fn problem(&self) -> &Problem {
        Session::problem(self)
    }
}

/// A problem that is open.
pub struct Opening {
    /// The session at it.
    pub session: Box<dyn Tutor>,
    /// True if it was left unfinished before and its lines are here again.
    pub resumed: bool,
    /// False if some of these lines could not be read; the notes tell which.
    pub whole: bool,
    /// What else a learner must know, such as that a journal could not be started.
    pub notes: Vec<Prose>,
}

/// A lesson in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LessonChoice {
    /// Its stable name.
    pub id: String,
    /// Its title, one line.
    pub title: String,
    /// What it teaches, in a sentence.
    pub teaches: String,
}

/// A problem that was left unfinished.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resumable {
    /// Its title.
    pub title: String,
    /// How many lines its working has.
    pub lines: usize,
}

/// What practice asks of the outside: lessons, and the learner's record.
pub trait Desk {
    /// Writes a line down before it is judged. Gives a note when that failed.
    fn entered(&mut self, line: &str) -> Vec<Prose>;

    /// Writes the verdict down. Gives a note when that failed.
    fn judged(&mut self, turn: &Turn) -> Vec<Prose>;

    /// The lessons to choose from, in the order in which they are taught.
    fn lessons(&self) -> Vec<LessonChoice>;

    /// Opens a fresh problem of a lesson, by its place in [`Desk::lessons`].
    ///
    /// # Errors
    /// A sentence for the learner.
    fn open(&mut self, lesson: usize) -> Result<Opening, Prose>;

    /// The problem that was left unfinished, if there is one.
    fn unfinished(&mut self) -> Option<Resumable>;

    /// Opens the problem that was left unfinished.
    ///
    /// # Errors
    /// A sentence for the learner.
    fn resume(&mut self) -> Result<Opening, Prose>;

    /// Problems that were left unfinished before that one, the latest first.
    fn older_unfinished(&self) -> Vec<Resumable> {
        Vec::new()
    }

    /// Opens one of these, by its place in [`Desk::older_unfinished`].
    ///
    /// # Errors
    /// A sentence for the learner.
    fn resume_older(&mut self, _place: usize) -> Result<Opening, Prose> {
        self.resume()
    }

    /// The learner does not want to be offered the unfinished problem again.
    fn decline(&mut self);

    /// The open problem was left: at its end, or before.
    fn closed(&mut self, finished: bool);

    /// The lesson of the problem that is open, by its place in [`Desk::lessons`], if it has one.
    fn open_lesson(&self) -> Option<usize> {
        None
    }

    /// True if everything that was entered is written down.
    fn has_kept_all(&self) -> bool {
        true
    }

    /// Opens a problem that the learner has built.
    ///
    /// # Errors
    /// A sentence for the learner.
    fn open_own(&mut self, problem: &Problem) -> Result<Opening, Prose>;

    /// Keeps it as a problem file under a name, and tells where it is.
    ///
    /// # Errors
    /// A sentence for the learner: what is wrong with the name, or why it cannot be written.
    fn keep_problem(&mut self, problem: &Problem, name: &str) -> Result<Prose, Prose>;

    /// The words in which practice speaks.
    fn words(&self) -> Words {
        Words::english()
    }
}

/// Where practice begins.
pub enum Start {
    /// At the list of lessons.
    Menu,
    /// At a fresh problem of a lesson, by its place in [`Desk::lessons`].
    Lesson(usize),
    /// At this problem.
    Problem(Opening),
}
