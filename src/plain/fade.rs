//! Worked examples that fade, at the list of the line dialogue.

use super::Dialogue;
use crate::practice::{LessonChoice, Opening, offered, taken};
use crate::session::{Fading, LineView};
use crate::text::{Prose, Slot};
use std::io;

impl Dialogue<'_> {
    /// Tells how the lesson to go on with may be taken.
    pub(super) fn offer(&mut self, lessons: &[LessonChoice], next: usize) -> io::Result<()> {
        let Some(lesson) = lessons.get(next) else {
            return Ok(());
        };
        let key = match offered(lesson.standing) {
            Fading::Worked => "plain.fade.worked",
            Fading::Last(_) => "plain.fade.last",
            Fading::All => return Ok(()),
        };
        let slots = [("number", Slot::Word((next + 1).to_string()))];
        self.say(&self.words.say(key, &slots))
    }

    /// What was typed before `worked` or `last 3`, and which of them was.
    pub(super) fn fading_behind(&self, typed: &str) -> (String, Option<Fading>) {
        let from = |place| Fading::told(&self.words, &typed[place..]);
        let starts = typed.char_indices().map(|(place, _)| place);
        let mut starts = starts.filter(|place| *place == 0 || typed[..*place].ends_with(' '));
        // The number of a lesson stands before it, that of the steps behind.
        let begins = |place: &usize| !typed[*place..].starts_with(|c: char| c.is_ascii_digit());
        match starts.find_map(|place| Some((place, from(place).filter(|_| begins(&place))?))) {
            Some((place, fading)) => (typed[..place].trim().to_owned(), Some(fading)),
            None => (typed.to_owned(), None),
        }
    }

    /// Opens a fresh problem of a lesson, taken so.
    pub(super) fn open(&mut self, lesson: usize, fading: Fading) -> Result<Opening, Prose> {
        let opening = self.desk.open(lesson)?;
        Ok(taken(opening, fading, &self.words))
    }

    /// A line of an example.
    pub(super) fn shown(&mut self, line: &LineView) -> io::Result<()> {
        let slots = [
            ("about", Slot::Word(line.about.clone())),
            ("line", Slot::Value(line.text.clone())),
        ];
        self.say(&self.words.say("plain.shown", &slots))
    }
}
