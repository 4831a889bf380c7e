//! Problems of the learner's own at the desk.

use super::JournalDesk;
use crate::lesson::write_problem;
use crate::practice::Opening;
use crate::problem::Problem;
use crate::store::NotKept;
use crate::text::{Prose, Slot};

impl JournalDesk {
    /// Opens a problem that was built here.
    pub(super) fn open_built(&mut self, problem: &Problem) -> Result<Opening, Prose> {
        self.opening(super::Found {
            problem: self.in_class(problem),
            sister: None,
            origin: None,
        })
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
