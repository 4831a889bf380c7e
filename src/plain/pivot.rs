//! The pivot chosen among the places of the drawing, in the line dialogue.

use super::{Dialogue, is_one_of};
use crate::session::View;
use crate::text::{Prose, Slot};
use std::io;

/// What becomes of a line.
pub(super) enum Chosen {
    /// It is entered, or another in its place.
    Line(String),
    /// It was answered here.
    Told,
}

impl Dialogue<'_> {
    /// Answers `pivot` with the numbered places, and lets `pivot 2` stand for the line that takes
    /// one; any other line is entered as it is.
    pub(super) fn pivot(&mut self, line: &str, view: &View) -> io::Result<Chosen> {
        let lower = line.trim().to_lowercase();
        let mut words = lower.split_whitespace();
        let order = words.next().unwrap_or_default();
        let rest: Vec<&str> = words.collect();
        let number = rest.first().map(|word| word.parse::<usize>());
        let is_order = is_one_of(&self.words, "plain.pivot", order)
            && matches!(number, None | Some(Ok(_)))
            && rest.len() < 3;
        if !is_order || view.pivots.is_empty() {
            return Ok(Chosen::Line(line.to_owned()));
        }
        let Some(Ok(number)) = number else {
            return self.places(view);
        };
        let place = number.checked_sub(1).and_then(|at| view.pivots.get(at));
        let freely = rest
            .get(1)
            .map(|word| is_one_of(&self.words, "command.freely", word));
        let line = match (place, freely) {
            (Some(place), None) => place.line.clone(),
            // Where one works freely already, or is about to, it is the same line.
            (Some(place), Some(true)) => place.freely.clone().or_else(|| place.line.clone()),
            _ => return self.places(view),
        };
        match (line, place) {
            (Some(line), _) => Ok(Chosen::Line(line)),
            (None, place) => {
                let told = place.map_or_else(Prose::default, |place| place.told.clone());
                self.say(&told)?;
                Ok(Chosen::Told)
            }
        }
    }

    /// The places, each behind its number, and how one is taken.
    fn places(&mut self, view: &View) -> io::Result<Chosen> {
        for (place, at) in view.pivots.iter().enumerate() {
            let slots = [
                ("number", Slot::Word((place + 1).to_string())),
                ("choice", Slot::Word(at.name.clone())),
            ];
            self.say(&self.words.say("plain.choice", &slots))?;
        }
        let by_steps = view.pivots.iter().any(|place| place.freely.is_some());
        let key = match (view.freely, by_steps) {
            (true, _) => "plain.pivot.take",
            (false, true) => "plain.pivot.asked",
            (false, false) => "plain.pivot.freely",
        };
        self.say(&self.words.say(key, &[]))?;
        Ok(Chosen::Told)
    }
}
