//! After the last step: what went well, what the slips were, one thing to do next.

use super::Session;
use super::turn::Progress;
use crate::hint::told;
use crate::key::StepId;
use crate::text::{Piece, Prose, Slot, Tag};

impl Session {
    /// The summary of a finished problem; empty before.
    pub(super) fn summary(&self) -> Vec<Prose> {
        if !self.is_finished() {
            return Vec::new();
        }
        let asked: Vec<StepId> = self.key.asked().map(|step| step.id).collect();
        let at_once = asked
            .iter()
            .filter(|step| {
                matches!(self.state.reached.get(step), Some((Progress::Done, _)))
                    && !self.state.wrong.contains_key(step)
                    && !self.state.hinted.contains_key(step)
            })
            .count();
        let counts = [
            ("count", Slot::Word(at_once.to_string())),
            ("all", Slot::Word(asked.len().to_string())),
        ];
        let mut summary = vec![self.words.say("summary.at-once", &counts)];
        let mut mistakes: Vec<(&'static str, usize)> = self
            .state
            .mistakes
            .iter()
            .map(|(id, count)| (*id, *count))
            .collect();
        mistakes.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
        for (id, _) in mistakes.iter().take(3) {
            // A force that nothing makes rewrites no working: it is no mistake of the catalogue.
            let name = match *id {
                "force-invented" => self.words.word("talk.invention-name"),
                id => self.words.word(&format!("mistake.{id}.name")),
            };
            summary.push(
                self.words
                    .say("summary.mistake", &[("mistake", Slot::Word(name))]),
            );
        }
        if mistakes.is_empty() {
            summary.push(self.words.say("summary.no-mistake", &[]));
        }
        summary.push(self.words.say("summary.key", &[]));
        for step in asked
            .iter()
            .filter(|step| !matches!(step, StepId::Forces | StepId::Pivot))
        {
            let text = told(&self.case(), *step);
            summary.push(Prose(vec![Piece {
                tag: Tag::Value,
                text,
            }]));
        }
        let next = match mistakes.first() {
            Some(_) => "summary.next-again",
            None => "summary.next-on",
        };
        summary.push(self.words.say(next, &[]));
        summary
    }
}
