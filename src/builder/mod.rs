//! A textbook problem put together by questions: the body, how it stands, what holds it, what it
//! carries. One answer after another; what was answered so far can be drawn, and what cannot be
//! solved is told at once.
//!
//! The answers are all there is: [`Builder`] asks the next [`Question`] of the draft that they make,
//! so an answer taken back leaves nothing behind. What comes out is a [`Problem`] like one of a
//! problem file.

mod draft;
mod hold;
mod prose;
mod question;
mod read;
#[cfg(test)]
mod tests;

pub use question::Question;

use crate::problem::{Problem, Size};
use crate::statics::solve;
use crate::text::{Prose, Slot, Words};
use draft::Draft;

/// The most answers that are taken.
const MOST_ANSWERS: usize = 60;

/// A problem that is being built.
#[derive(Clone, Debug)]
pub struct Builder {
    words: Words,
    answers: Vec<String>,
    draft: Draft,
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
        let draft = question.take(&self.draft, typed, &self.words)?;
        self.draft = draft;
        self.answers.push(typed.to_owned());
        Ok(self.remark(question))
    }

    /// Takes the last answer back. False if there is none.
    pub fn back(&mut self) -> bool {
        if self.answers.pop().is_none() {
            return false;
        }
        // What could be answered before can be answered again.
        let answers = std::mem::take(&mut self.answers);
        self.draft = Draft::default();
        for answer in answers {
            let _ = self.answer(&answer);
        }
        true
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
            Err(why) => Standing::Unsound(prose::unsolvable(&why, &self.words)),
        }
    }

    /// What is said at once behind an answer that completes a hold or a load: what stands in the way
    /// as it is.
    fn remark(&self, question: Question) -> Option<Prose> {
        let bare = self.draft.mass == Some(None) && self.draft.loads.is_empty();
        if !question.completes(&self.draft) || bare && question != Question::Load {
            return None;
        }
        match self.standing() {
            Standing::Sound => None,
            Standing::Unsound(why) => Some(why),
        }
    }
}
