//! What a line that was not understood may have meant: a command mistyped, or a way alone where a
//! part of a force is asked.

use super::command::near_command;
use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::statement::{Named, Said, Statement, read};
use crate::key::{Axis, Part, StepId};
use crate::text::Slot;

impl Session {
    /// The answer to a line, or where it was not understood, to what it may have meant.
    pub(super) fn or_meant(&mut self, line: &str, outcome: Outcome) -> Outcome {
        if outcome.sign != Sign::Unclear {
            return outcome;
        }
        if let Some(command) = near_command(&self.words, line) {
            let slots = [("command", Slot::Key(command))];
            let message = self.words.say("talk.command-meant", &slots);
            return Outcome::verdict(outcome.sign, outcome.verdict, outcome.truth, message);
        }
        if let Some(outcome) = self.way_alone(line) {
            return outcome;
        }
        // Where words are asked they have their own answers.
        if matches!(
            self.asked_now(),
            None | Some(StepId::Forces | StepId::Pivot)
        ) {
            return outcome;
        }
        let otherwise = self
            .read_otherwise(line)
            .or_else(|| self.answer_words(line));
        otherwise.unwrap_or(outcome)
    }

    /// The answer to a line without the words beside its formula.
    fn read_otherwise(&mut self, line: &str) -> Option<Outcome> {
        if let Some(outcome) = self.answer_told_names(line) {
            return Some(outcome);
        }
        if let Some(outcome) = self.answer_direction(line) {
            return Some(outcome);
        }
        if let Some(outcome) = self.answer_with_definition(line) {
            return Some(outcome);
        }
        if let Some(outcome) = self.answer_push_or_pull(line) {
            return Some(outcome);
        }
        let without = self.answer_without_words(line);
        without.or_else(|| self.sum_in_words(line))
    }

    /// `S = 4165 N push`: the value, and that the word behind it is not judged. Which way a strut
    /// pushes hangs on where its other end is, and a line of action tells none.
    fn answer_push_or_pull(&mut self, line: &str) -> Option<Outcome> {
        let said = line.trim_end_matches([' ', '.', ')']);
        let words = self.words.word("beside.push-or-pull");
        let formula = words.split(',').find_map(|word| {
            let start = said.len().checked_sub(word.trim().len())?;
            let (formula, last) = (said.get(..start)?, said.get(start..)?);
            let apart = formula.ends_with([' ', ',', '(']);
            (apart && last.eq_ignore_ascii_case(word.trim())).then_some(formula)
        })?;
        let formula = formula.trim_end_matches([' ', ',', '(']);
        if !self.is_general() || !formula.contains('=') || !self.is_readable(formula) {
            return None;
        }
        let outcome = self.answered_at_step(formula);
        let unread = self.words.say("talk.push-or-pull", &[]);
        (outcome.sign != Sign::Unclear).then(|| Outcome {
            message: outcome.message.clone().then(unread),
            ..outcome
        })
    }

    /// `H² = T² + W² with W = (m_b + m_1) g`: the name first, and then what is told with it.
    fn answer_with_definition(&mut self, line: &str) -> Option<Outcome> {
        let words = self.words.word("own.with");
        let mut words = words.split(',').map(|word| format!(" {} ", word.trim()));
        let (formula, names) = words.find_map(|word| line.split_once(word.as_str()))?;
        let (name, rest) = names.split_once('=')?;
        let name = name.trim();
        let short = name.chars().count() <= 3 && name.chars().all(char::is_alphanumeric);
        let both = self.is_free() && formula.contains('=') && short && !rest.contains('=');
        if !both || self.is_symbol(name) || !self.is_readable(names) {
            return None;
        }
        let formula = formula.trim_end().trim_end_matches(',');
        let outcome = self.answered_at_step(&format!("{names}; {formula}"));
        (outcome.sign != Sign::Unclear).then_some(outcome)
    }

    fn answer_without_words(&mut self, line: &str) -> Option<Outcome> {
        let shorter = self.without_words_beside(line)?;
        // What has no name claims nothing of what is asked.
        let (head, _) = shorter.split_once('=').unwrap_or((&shorter, ""));
        let nameless = shorter.starts_with(' ')
            && head.trim_start().starts_with(|c: char| c.is_ascii_digit())
            && !(self.is_free() && shorter.contains('=') && head.contains(char::is_alphabetic));
        let asked = self.asked_now()?;
        if nameless && !self.judged(asked, &shorter).stands() {
            return None;
        }
        let outcome = self.answered_at_step(&shorter);
        (outcome.sign != Sign::Unclear).then_some(outcome)
    }

    /// "R acts 4797.6/1548.4 = 3.098 m right of the hinge": words around a true sum, of which in a
    /// free working no more is said than that.
    fn sum_in_words(&mut self, line: &str) -> Option<Outcome> {
        if !self.is_free() {
            return None;
        }
        let formula = self.formula_in_words(line)?;
        self.known_truth(formula)?;
        Some(Outcome::noted(self.words.say("talk.true-of-numbers", &[])))
    }

    /// "Down", where the upright part of a hinge's force is asked: judged as far as it goes.
    fn way_alone(&mut self, line: &str) -> Option<Outcome> {
        let asked = self.asked()?;
        let axis = match asked {
            StepId::Reaction(_, Part::Along(axis)) => Some(axis),
            StepId::Reaction(_, Part::Size) => None,
            _ => return None,
        };
        let Statement::Says(said) = read(&self.problem, &self.words, line) else {
            return None;
        };
        let [
            Said {
                named: Named::None,
                place: None,
                way: Some(way),
                denied: false,
                ..
            },
        ] = said.as_slice()
        else {
            return None;
        };
        let positive = match axis {
            Some(Axis::Horizontal) => way.right,
            Some(Axis::Vertical) => way.up,
            None => None,
        };
        let noted = |key: &str| {
            let message = self.words.say(key, &[]);
            Some(Outcome::noted(message))
        };
        let Some(positive) = positive else {
            return noted("talk.way-only");
        };
        let names = self.names();
        let own = self.own_values();
        let right = self.board(&names, &own).right(asked)?[0];
        if (right > 0.0) == positive {
            return noted("talk.way-alone");
        }
        self.miss(asked, Some("way"));
        let message = self.words.say("talk.way-alone-wrong", &[]);
        Some(Outcome::verdict(
            Sign::Wrong,
            "verdict.wrong",
            "wrong",
            message,
        ))
    }
}
