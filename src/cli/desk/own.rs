//! Sessions at the desk, and problems of the learner's own.

use super::{JournalDesk, class};
use crate::lesson::{ProblemFile, write_problem};
use crate::practice::Opening;
use crate::problem::Problem;
use crate::session::Session;
use crate::store::NotKept;
use crate::text::{Prose, Slot, Words, printable};
use crate::working::{Underivable, why};

impl JournalDesk {
    /// A session at a problem of either kind, in a language.
    pub(super) fn started(
        &self,
        problem: ProblemFile,
        sister: Option<Problem>,
        words: Words,
    ) -> Result<Session, Prose> {
        let refused_by = |trouble: Underivable| {
            let why = why(&trouble, &self.words);
            self.words.say("cli.no-walk", &[("why", Slot::Word(why))])
        };
        match problem {
            // A body held otherwise than by a hinge and a rope is walked through in general parts.
            ProblemFile::Guided(problem) => {
                match Session::start(problem.clone(), sister, words.clone()) {
                    Ok(mut session) => {
                        session.ask_estimates();
                        Ok(session)
                    }
                    Err(_) => Session::start_straight(&problem, words).map_err(refused_by),
                }
            }
            ProblemFile::General(system) => {
                Session::start_general(&system, words).map_err(refused_by)
            }
        }
    }

    /// Opens a problem that was built here.
    pub(super) fn open_built(&mut self, problem: &Problem) -> Result<Opening, Prose> {
        self.opening(super::Found {
            problem: self.in_class(problem),
            sister: None,
            origin: None,
        })
    }

    /// What the class fixes, and that a problem begun in another one keeps what held there.
    pub(super) fn set_for_class(&self) -> Vec<Prose> {
        let class = &self.library.class;
        let mut told = class::fixed(class, &self.words);
        let begun = self.current.as_ref();
        if let Some(begun) = begun.filter(|begun| class::is_other(class, &begun.asked)) {
            let name = class::name_then(&begun.asked);
            let slots = [("class", Slot::Word(printable(name)))];
            let key = match name.is_empty() {
                true => "class.begun-without",
                false => "class.begun-in",
            };
            told.push(self.words.say(key, &slots));
        }
        told
    }

    /// The problem with the g and the figures of the class.
    fn in_class(&self, problem: &Problem) -> Problem {
        let class = &self.library.class;
        class.problem(problem).unwrap_or_else(|_| problem.clone())
    }

    /// Keeps it as a problem file, and tells where.
    pub(super) fn keep_built(&mut self, problem: &Problem, name: &str) -> Result<Prose, Prose> {
        let Some((store, learner)) = &self.store else {
            return Err(self.words.say("build.kept.nowhere", &[]));
        };
        let place = |place: &std::path::Path| {
            let told = crate::text::printable(&place.display().to_string());
            [("place", Slot::Value(told))]
        };
        match store.keep_problem(learner, name, &write_problem(&self.in_class(problem))) {
            Ok(path) => Ok(self.words.say("build.kept", &place(&path))),
            Err(NotKept::Name) => Err(self.words.say("build.kept.name", &[])),
            Err(NotKept::Taken { place: path }) => {
                Err(self.words.say("build.kept.taken", &place(&path)))
            }
            Err(NotKept::Trouble(trouble)) => Err(trouble.say(&self.words)),
        }
    }
}
