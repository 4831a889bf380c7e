//! What a mended line of a guided working takes with it: values that rested on what was wrong are
//! asked again.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::{Own, nearest_inputs};
use crate::key::StepId;
use crate::text::{Prose, Slot};
use std::collections::BTreeSet;

/// Values that differ by no more than this share are one, rounded on the way.
const SAME: f64 = 0.005;

impl Session {
    /// An answer to a step that is asked. Where it puts right what her later lines rest on, those
    /// that hold no longer are told, and their steps are asked again.
    pub(super) fn answer_asked(&mut self, asked: StepId, line: &str) -> Outcome {
        let wrong = self.wrong_in_force();
        let carried: Vec<StepId> = self.state.carried.iter().map(|(step, _)| *step).collect();
        let mut outcome = self.answer(asked, line);
        let mut mended = self.mended(&wrong, self.state.next_number);
        // So is a wrong balance that she went on with.
        let still = |step: &StepId| {
            self.state
                .carried
                .iter()
                .any(|(carried, _)| carried == step)
        };
        mended.extend(carried.into_iter().filter(|step| !still(step)));
        if !mended.is_empty() && !self.is_free() {
            let stale = self.asked_again(&mended);
            outcome.message = outcome.message.then(stale);
        }
        outcome
    }

    /// Takes back the wrong values that followed from these steps as they were; says of which lines.
    fn asked_again(&mut self, mended: &BTreeSet<StepId>) -> Prose {
        let mut hers = self.wrong_in_force();
        hers.sort_by_key(|(_, line)| *line);
        let mut changed = mended.clone();
        let mut prose = Prose::default();
        for (step, line) in hers {
            let inputs = nearest_inputs(&self.key, step);
            let balances = inputs.iter().filter_map(|input| self.key.sum_of(*input));
            let mut all = inputs.iter().skip(1).copied().chain(balances);
            let rests = all.any(|input| changed.contains(&input));
            if !rests || !self.followed(line) || self.follows_still(step, line) {
                continue;
            }
            changed.insert(step);
            self.state.standing.remove(&step);
            self.state.reached.remove(&step);
            let slots = [
                ("line", Slot::Word(line.to_string())),
                ("step", Slot::Word(self.title(step))),
            ];
            prose = prose.then(self.words.say("talk.asked-again", &slots));
        }
        prose
    }

    /// True for a line that was right from her own values.
    fn followed(&self, line: usize) -> bool {
        let mut lines = self.state.lines.iter();
        lines.any(|view| view.number == Some(line) && view.sign == Sign::Follows)
    }

    /// True for a line that gives the same value as her values are now.
    fn follows_still(&mut self, step: StepId, line: usize) -> bool {
        let text = self
            .state
            .lines
            .iter()
            .find(|view| view.number == Some(line));
        let text = text.map(|view| view.text.clone());
        let Some((text, own)) = text.zip(self.state.standing.remove(&step)) else {
            return false;
        };
        let judgement = self.judged_guided(step, &text);
        let gives = |(given, now): &(StepId, Own)| {
            *given == step && (now.value - own.value).abs() <= SAME * own.value.abs()
        };
        let follows = judgement.truth.holds() && judgement.values.iter().any(gives);
        self.state.standing.insert(step, own);
        follows
    }
}
