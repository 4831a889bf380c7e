//! The one place that joins the rooms: a line in, a [`Turn`] out.
//!
//! A session is a function of its problem and the lines entered: entering the same lines again
//! rebuilds it exactly, which is how a journal resumes it. It knows no terminal, file or clock.

mod turn;

pub use turn::{Course, Kept, LineView, NameView, Progress, Sign, StepView, Turn, View};

use crate::key::Underivable;
use crate::problem::Problem;
use crate::text::Words;

/// A learner at one problem.
pub struct Session {
    problem: Problem,
    words: Words,
}

impl Session {
    /// Opens a problem. `sister` is another problem of the same lesson, worked in a hint.
    ///
    /// # Errors
    /// When no guided working exists for the problem.
    pub fn start(
        problem: Problem,
        sister: Option<Problem>,
        words: Words,
    ) -> Result<Session, Underivable> {
        crate::key::derive(&problem)?;
        let _ = sister;
        Ok(Session { problem, words })
    }

    /// The problem.
    pub fn problem(&self) -> &Problem {
        &self.problem
    }

    /// The words in which the session speaks.
    pub fn words(&self) -> &Words {
        &self.words
    }
}
