//! A textbook problem put together by questions: the body, how it stands, what holds it, what it
//! carries. One answer after another; what was answered so far can be drawn, and what cannot be
//! solved is told at once.
//!
//! The answers are all there is: [`Builder`] asks the next [`Question`] of the draft that they make,
//! so an answer taken back leaves nothing behind. What comes out is a [`Problem`] like one of a
//! problem file.

mod draft;
mod hold;
mod listed;
mod prose;
mod question;
mod read;
#[cfg(test)]
mod tests;

pub use listed::Listed;
pub use question::Question;

use crate::problem::{Problem, Size, SupportKind};
use crate::statics::solve;
use crate::text::{Prose, Slot, Words};
use draft::Draft;

/// The most answers that are taken.
const MOST_ANSWERS: usize = 60;

/// A problem that is being built.
#[derive(Clone, Debug)]
pub struct Builder {
    words: Words,
    answers: Vec<Answer>,
    draft: Draft,
}

/// An answer that was taken.
#[derive(Clone, Debug)]
struct Answer {
    question: Question,
    typed: String,
    listed: Listed,
}

/// What a question looks like to the learner.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// The question.
    pub prompt: Prose,
    /// What may be chosen by number, from 1; empty where a text or a number is typed.
    pub choices: Vec<Prose>,
    /// An example of what is typed; empty where one chooses.
    pub example: Prose,
}

/// How a whole problem stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Standing {
    /// It can be worked.
    Sound,
    /// It cannot: a sentence that says why, and what to change.
    Unsound(Prose),
}

impl Builder {
    /// Nothing answered yet.
    pub fn new(words: Words) -> Builder {
        Builder {
            words,
            answers: Vec::new(),
            draft: Draft::default(),
        }
    }

    /// The next question; `None` once everything is told.
    pub fn question(&self) -> Option<Question> {
        Question::next(&self.draft)
    }

    /// The next question in words.
    pub fn asked(&self) -> Option<Asked> {
        Some(self.question()?.asked(&self.draft, &self.words))
    }

    /// Takes an answer to the next question. What could be said of the problem at once, if there is
    /// something, is given back.
    ///
    /// # Errors
    /// A sentence that says what is wrong with the answer; the question stays.
    pub fn answer(&mut self, typed: &str) -> Result<Option<Prose>, Prose> {
        let Some(question) = self.question() else {
            return Ok(None);
        };
        if self.answers.len() >= MOST_ANSWERS {
            return Err(self.words.say("build.too-many", &[]));
        }
        self.draft = question.take(&self.draft, typed, &self.words)?;
        self.answers.push(Answer {
            question,
            typed: typed.to_owned(),
            listed: question.listed(&self.draft, typed, &self.words),
        });
        let completed = question.completes(&self.draft);
        Ok(self.trouble().filter(|_| completed))
    }

    /// Takes the last answer back. Gives what it answered, and what was typed.
    pub fn back(&mut self) -> Option<(Question, String)> {
        let last = self.answers.pop()?;
        self.draft = Draft::default();
        for Answer {
            question, typed, ..
        } in &self.answers
        {
            // What could be answered before can be answered again.
            if let Ok(draft) = question.take(&self.draft, typed, &self.words) {
                self.draft = draft;
            }
        }
        Some((last.question, last.typed))
    }

    /// What was answered so far, in that order.
    pub fn listed(&self) -> impl Iterator<Item = &Listed> {
        self.answers.iter().map(|answer| &answer.listed)
    }

    /// How many answers were given.
    pub fn answered(&self) -> usize {
        self.answers.len()
    }

    /// The problem as far as it is told, for its drawing; `None` before there is a body.
    pub fn problem(&self) -> Option<Problem> {
        self.draft.problem(&self.words)
    }

    /// Whether what is told so far can be worked.
    pub fn standing(&self) -> Standing {
        let unsound =
            |key: &str, slots: &[(&str, Slot)]| Standing::Unsound(self.words.say(key, slots));
        let Some(problem) = self.problem() else {
            return unsound("build.not-yet", &[]);
        };
        if problem
            .forces()
            .iter()
            .all(|force| force.size == Size::Unknown)
        {
            return unsound("build.why.nothing", &[]);
        }
        match solve(&problem, &problem.values()) {
            Ok(_) => Standing::Sound,
            Err(why) => {
                Standing::Unsound(prose::unsolvable(&why, has_hinge(&problem), &self.words))
            }
        }
    }

    /// What stands in the way of working it as far as it is told; `None` too while it is not told yet
    /// what holds it, or what has a weight.
    pub fn trouble(&self) -> Option<Prose> {
        if !self.draft.is_held() || !self.draft.is_loaded() {
            return None;
        }
        match self.standing() {
            Standing::Sound => None,
            Standing::Unsound(why) => Some(why),
        }
    }
}

fn has_hinge(problem: &Problem) -> bool {
    let mut supports = problem.supports().iter();
    supports.any(|support| support.kind == SupportKind::Hinge)
}
