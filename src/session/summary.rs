//! After the last step: what went well, what the slips were, one thing to do next, and the key.

use super::Session;
use super::state::Told;
use super::turn::Progress;
use crate::hint::told;
use crate::key::StepId;
use crate::text::{Piece, Prose, Slot, Tag};

/// What a finished walk counts. Every sentence of the summary rests on these.
struct Counts {
    /// Steps asked.
    all: usize,
    /// Right at the first go and without a hint.
    at_once: usize,
    /// Answered by the learner, with a line that holds.
    answered: usize,
    /// Not needed in the learner's own way.
    without: usize,
    /// Passed over or shown.
    passed: usize,
    /// Gone on with though the line does not hold.
    gone_on: usize,
    /// Lines that did not hold.
    wrong: usize,
}

impl Session {
    fn counts(&self) -> Counts {
        let state = &self.state;
        // A free working does not ask which forces act, nor for the pivot.
        let unasked = |id: &StepId| {
            let passed = matches!(state.reached.get(id), Some((Progress::Passed, _)));
            self.is_free() && matches!(id, StepId::Forces | StepId::Pivot) && passed
        };
        let asked = self.key.asked().map(|step| step.id);
        let asked: Vec<StepId> = asked.filter(|id| !unasked(id)).collect();
        let count = |wanted: &dyn Fn(&StepId) -> bool| asked.iter().filter(|id| wanted(id)).count();
        let without = |id: &StepId| state.done_without.contains(id);
        let gone_past = |id: &StepId| {
            state.told.contains(id) || matches!(state.reached.get(id), Some((Progress::Passed, _)))
        };
        let passed = |id: &StepId| gone_past(id) && !without(id);
        let gone_on = |id: &StepId| state.gone_on.contains_key(id);
        let answered =
            |id: &StepId| state.reached.contains_key(id) && !gone_past(id) && !gone_on(id);
        Counts {
            all: asked.len(),
            at_once: count(&|id| {
                answered(id) && !state.wrong.contains_key(id) && !state.hinted.contains_key(id)
            }),
            answered: count(&answered),
            without: count(&without),
            passed: count(&passed),
            gone_on: count(&gone_on),
            wrong: state.wrong.values().sum(),
        }
    }

    /// True if by far the most steps were answered by the learner.
    pub(super) fn is_well_worked(&self) -> bool {
        let counts = self.counts();
        4 * counts.answered >= 3 * (counts.all - counts.without)
    }

    /// The summary of a finished problem; empty before.
    pub(super) fn summary(&self) -> Vec<Prose> {
        if !self.is_finished() {
            return Vec::new();
        }
        let counts = self.counts();
        let say = |key: &str, count: usize| {
            let slots = [
                ("count", Slot::Word(count.to_string())),
                ("all", Slot::Word(counts.all.to_string())),
            ];
            self.words.say(key, &slots)
        };
        let mut summary = vec![say("summary.at-once", counts.at_once)];
        if counts.without > 0 {
            summary.push(say("summary.without", counts.without));
        }
        if counts.passed > 0 {
            summary.push(say("summary.passed", counts.passed));
        }
        if counts.gone_on > 0 {
            summary.push(say("summary.gone-on", counts.gone_on));
        }
        let mistakes = self.mistakes_named();
        for (name, flat) in &mistakes {
            let slots = [("mistake", Slot::Word(name.clone()))];
            let key = if *flat {
                "summary.mistake"
            } else {
                "summary.mistake-perhaps"
            };
            summary.push(self.words.say(key, &slots));
        }
        if counts.wrong > 0 && mistakes.is_empty() {
            summary.push(say("summary.wrong", counts.wrong));
        }
        if counts.wrong == 0 && counts.answered > 0 {
            summary.push(self.words.say("summary.no-mistake", &[]));
        }
        summary.push(
            self.words
                .say(self.next_after(&counts, mistakes.is_empty()), &[]),
        );
        summary.push(self.words.say("summary.key", &[]));
        for step in self.key.asked().map(|step| step.id) {
            let again = crate::hint::is_said_again(&self.case(), step);
            if !again && !matches!(step, StepId::Forces | StepId::Pivot) {
                summary.push(Prose(vec![Piece {
                    tag: Tag::Value,
                    text: told(&self.words, &self.case(), step),
                }]));
            }
        }
        summary
    }

    /// One thing to do next.
    fn next_after(&self, counts: &Counts, no_mistake: bool) -> &'static str {
        match no_mistake {
            // A problem of one's own belongs to no lesson.
            false if self.is_general() => "general.summary.next-again",
            true if self.is_general() => "general.summary.next",
            false => "summary.next-again",
            true if counts.wrong > 0 || 2 * counts.at_once < counts.all - counts.without => {
                "summary.next-same"
            }
            true => "summary.next-on",
        }
    }

    /// The names of the mistakes and slips that were told, those told most first; three at most.
    /// False beside one that was named with "perhaps" only.
    fn mistakes_named(&self) -> Vec<(String, bool)> {
        let mistakes = self.state.mistakes.iter();
        let mut told: Vec<(&str, Told)> = mistakes.map(|(id, told)| (*id, *told)).collect();
        told.sort_by_key(|(_, told)| std::cmp::Reverse((told.times, told.flatly)));
        let name = |id: &str| match id {
            // A force that nothing makes rewrites no working: it is no mistake of the catalogue.
            "force-invented" => self.words.word("talk.invention-name"),
            id => {
                let general = self.is_general().then(|| format!("general.name.{id}"));
                let mut named = general.into_iter().chain([format!("summary.slip.{id}")]);
                let known = named.find(|key| self.words.has(key));
                self.words
                    .word(&known.unwrap_or_else(|| format!("mistake.{id}.name")))
            }
        };
        let named = |(id, told): &(&str, Told)| (name(id), told.flatly > 0);
        told.iter().take(3).map(named).collect()
    }
}
