//! What a way of working is given by its caller, and what it asks of it.

use crate::problem::Problem;
use crate::record::Standing;
use crate::session::{Session, Turn, View};
use crate::text::{Formula, Prose, Settings, Words};

/// A session as the screen and the dialogue see it.
pub trait Tutor {
    /// Judges a line. It has been written to disk before, see [`Desk::entered`].
    fn submit(&mut self, line: &str) -> Turn;

    /// Everything there is to show.
    fn view(&self) -> View;

    /// How the line being typed would be read, in mathematical layout, without its value.
    fn preview(&self, line: &str) -> Option<Formula>;

    /// The problem, for the diagram.
    fn problem(&self) -> &Problem;

    /// The words in which it speaks, where they are known.
    fn words(&self) -> Option<Words> {
        None
    }
}

impl Tutor for Session {
    fn submit(&mut self, line: &str) -> Turn {
        Session::submit(self, line)
    }

    fn view(&self) -> View {
        Session::view(self)
    }

    fn preview(&self, line: &str) -> Option<Formula> {
        Session::preview(self, line)
    }

    fn problem(&self) -> &Problem {
        Session::problem(self)
    }

    fn words(&self) -> Option<Words> {
        Some(Session::words(self).clone())
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
    /// A line that is entered at once, as if it had been typed.
    pub first: Option<String>,
    /// What else a learner must know, such as that a journal could not be started.
    pub notes: Vec<Prose>,
}

/// A lesson in the list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LessonChoice {
    /// Its stable name.
    pub id: String,
    /// Its title, one line.
    pub title: String,
    /// What it teaches, in a sentence.
    pub teaches: String,
    /// The lessons that come before it, by their places in [`Desk::lessons`].
    pub builds_on: Vec<usize>,
    /// How the learner stands with it.
    pub standing: Standing,
}

/// Who is at work, and who else is known here.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct People {
    /// The name of the learner at work, fit to be shown; none if none was given.
    pub name: Option<String>,
    /// The names of the others, fit to be shown; each is chosen by its place, from 1.
    pub others: Vec<String>,
    /// True when it is time to ask for a name: there is something to keep, and none was given.
    pub ask: bool,
}

/// A problem that was left unfinished.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Resumable {
    /// Its title.
    pub title: String,
    /// How many lines its working has.
    pub lines: usize,
}

/// A problem that was worked at before, finished or not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Earlier {
    /// Its title.
    pub title: String,
    /// The day of its last line: `2026-11-28`.
    pub day: String,
    /// How many lines its working has.
    pub lines: usize,
    /// True if it was worked to its end.
    pub finished: bool,
}

/// A problem that is looked at again, line by line.
pub struct Again {
    /// The session after its last line. Nothing more is entered.
    pub session: Box<dyn Tutor>,
    /// What was shown before its first line, and after each.
    pub views: Vec<View>,
    /// What else a learner must know, such as that lines could not be read.
    pub notes: Vec<Prose>,
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

    /// Every problem that was worked at before, the latest first.
    fn earlier(&mut self) -> Vec<Earlier> {
        Vec::new()
    }

    /// Looks at one of them again, by its place among what [`Desk::earlier`] gave last.
    ///
    /// # Errors
    /// A sentence for the learner.
    fn look_again(&mut self, _place: usize) -> Result<Again, Prose> {
        Err(Words::english().say("again.none", &[]))
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

    /// Who is at work, and who else is known.
    fn people(&self) -> People {
        People::default()
    }

    /// The learner says who is at work: a name, or the number of somebody known; blank for nobody
    /// in particular. What was entered without a name goes to the one who is named. At a problem a
    /// learner who has a name gets another one; at the list somebody else sits down.
    ///
    /// Gives what to say; empty if nothing changed.
    ///
    /// # Errors
    /// A sentence for the learner; nothing changed.
    fn call(&mut self, _typed: &str, _at_problem: bool) -> Result<Prose, Prose> {
        Ok(Prose::default())
    }

    /// What the learner at work has chosen for the display.
    fn settings(&self) -> Settings {
        Settings::default()
    }

    /// What the teacher has set for the class, a sentence each; nothing that a learner can choose
    /// changes it.
    fn fixed(&self) -> Vec<Prose> {
        Vec::new()
    }

    /// The learner chooses anew. Gives a note where that could not be written down; it holds for
    /// this sitting all the same.
    fn settle(&mut self, _settings: Settings) -> Vec<Prose> {
        Vec::new()
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
