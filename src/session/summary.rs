//! After the last step: what went well, what the slips were, and one thing to do next.

use super::Session;
use super::state::Told;
use super::turn::Progress;
use crate::key::StepId;
use crate::text::{Prose, Slot};
use crate::units::value_text;

/// What a finished walk counts. Every sentence of the summary rests on these.
struct Counts {
    /// Steps asked.
    all: usize,
    /// Right at the first go and without a hint.
    at_once: usize,
    /// Answered after a line that did not hold.
    mended: usize,
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

/// A mistake that was named.
struct Slip {
    /// What it is called.
    name: String,
    /// False if it was named with "perhaps" only.
    flat: bool,
    /// The numbers of its lines.
    lines: Vec<usize>,
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
            mended: count(&|id| answered(id) && state.wrong.contains_key(id)),
            answered: count(&answered),
            without: count(&without),
            passed: count(&passed),
            gone_on: count(&gone_on),
            wrong: state.wrong.values().sum(),
        }
    }

    /// True if the learner has answered a step.
    pub(super) fn has_answered(&self) -> bool {
        self.counts().answered > 0
    }

    /// True if by far the most steps were answered by the learner.
    pub(super) fn is_well_worked(&self) -> bool {
        let counts = self.counts();
        4 * counts.answered >= 3 * (counts.all - counts.without)
    }

    /// The summary of a finished problem, what to do next last; empty before.
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
        if counts.mended > 0 {
            summary.push(say("summary.mended", counts.mended));
        }
        if counts.without > 0 {
            summary.push(say("summary.without", counts.without));
        }
        if counts.passed > 0 {
            summary.push(say("summary.passed", counts.passed));
        }
        if counts.gone_on > 0 {
            summary.push(say("summary.gone-on", counts.gone_on));
        }
        summary.extend(self.own_results());
        summary.extend(self.guesses_told());
        let mistakes = self.mistakes_named();
        for Slip { name, flat, lines } in &mistakes {
            let slots = [
                ("mistake", Slot::Word(name.clone())),
                ("lines", Slot::Word(self.lines_told(lines))),
            ];
            let key = if *flat {
                "summary.mistake"
            } else {
                "summary.mistake-perhaps"
            };
            summary.push(self.words.say(key, &slots));
        }
        let unnamed = self.unnamed_lines();
        if counts.wrong > 0 && !unnamed.is_empty() {
            let slots = [
                ("count", Slot::Word(unnamed.len().to_string())),
                ("lines", Slot::Word(self.lines_told(&unnamed))),
            ];
            let key = match mistakes.is_empty() {
                true => "summary.wrong",
                false => "summary.wrong-too",
            };
            summary.push(self.words.say(key, &slots));
        }
        if counts.wrong == 0 && counts.answered > 0 {
            summary.push(self.words.say("summary.no-mistake", &[]));
        }
        summary.push(
            self.words
                .say(self.next_after(&counts, mistakes.is_empty()), &[]),
        );
        summary
    }

    /// The results of hers that rest on what she went on with, and what is right.
    fn own_results(&self) -> Option<Prose> {
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let result = |id: StepId| id.is_unknown() || matches!(id, StepId::Reaction(..));
        let wrong = self.key.asked().filter(|step| result(step.id));
        let told = wrong.filter_map(|step| {
            let own = self.state.standing.get(&step.id)?;
            let right = board
                .right(step.id)
                .filter(|_| !own.right && own.line > 0)?;
            let right = value_text(right[0], step.dimension, self.problem.figures());
            let named = |value: String| format!("{} = {value}", step.symbol.shown());
            Some((named(self.own_value_text(step.id, own)), named(right)))
        });
        let (hers, right): (Vec<String>, Vec<String>) = told.unzip();
        let slots = [
            ("own", Slot::Value(hers.join(", "))),
            ("right", Slot::Value(right.join(", "))),
        ];
        (!hers.is_empty()).then(|| self.words.say("summary.own-results", &slots))
    }

    /// How many sentences of the summary name slips; they stand right before the last.
    pub(super) fn slips_told(&self) -> usize {
        let unnamed = self.counts().wrong > 0 && !self.unnamed_lines().is_empty();
        match self.is_finished() && self.summary_of_example().is_none() {
            true => self.mistakes_named().len() + usize::from(unnamed),
            false => 0,
        }
    }

    /// `line 7`, `lines 4, 7`.
    fn lines_told(&self, lines: &[usize]) -> String {
        let numbers: Vec<String> = lines.iter().map(ToString::to_string).collect();
        let slots = [("lines", Slot::Word(numbers.join(", ")))];
        let key = match lines.len() {
            1 => "summary.lines.one",
            _ => "summary.lines.many",
        };
        self.words.say(key, &slots).to_string()
    }

    /// The lines that did not hold and of which no mistake was named.
    fn unnamed_lines(&self) -> Vec<usize> {
        let named: Vec<usize> = (self.state.mistakes.values())
            .flat_map(|told| told.lines.clone())
            .collect();
        let mut lines = self.state.wrong_lines.clone();
        lines.retain(|line| !named.contains(line));
        lines.dedup();
        lines
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

    /// The mistakes and slips that were told, those told most first; three at most.
    fn mistakes_named(&self) -> Vec<Slip> {
        let mistakes = self.state.mistakes.iter();
        let mut told: Vec<(&str, &Told)> = mistakes.map(|(id, told)| (*id, told)).collect();
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
        let named = |(id, told): &(&str, &Told)| Slip {
            name: name(id),
            flat: told.flatly > 0,
            lines: told.lines.clone(),
        };
        told.iter().take(3).map(named).collect()
    }
}
