//! A number that is sought with more than one true value: whichever the learner finds is right, and
//! the working goes on with it.

use super::turn::{Progress, Sign};
use super::{Outcome, Session};
use crate::judge::{Judgement, Own, Remark, Truth};
use crate::key::{Key, Pins, Sampling, StepId};
use crate::mistakes::general_instances;
use crate::text::{Prose, Slot};
use crate::working::But;

/// Values that differ by less than this share of them are one.
const SAME: f64 = 1e-6;
/// A number typed for a value that is no answer is near it within this share.
const NEAR: f64 = 0.005;

impl Session {
    /// The answer to a line that does not hold at the value of what is sought that the key is worked
    /// with, and does at another one; `None` for other lines.
    pub(super) fn answer_at_another_value(
        &mut self,
        asked: StepId,
        line: &str,
        judgement: &Judgement,
    ) -> Option<Outcome> {
        if judgement.stands() {
            // A sign that is only counted otherwise here may be the sign that it has elsewhere.
            return match judgement.remarks.contains(&Remark::OppositeSense) {
                true => self.answer_of_the_same_sign(asked, line, judgement),
                false => None,
            };
        }
        let (_, sought) = self.key.general.as_ref()?.sought?;
        for index in 0..self.others.len() {
            if !self.turn_to_value(index) {
                continue;
            }
            let there = self.judged_told(asked, line);
            // What holds there and is no answer to the question tells the value as well.
            let relation = there.names.is_none() && judgement.truth != Truth::Noted;
            let holds = there.truth.holds() || there.stands() && relation;
            if !holds {
                // A form whose way is not to be seen is told so, and settles no value.
                if there.remarks.contains(&Remark::NotSeen) && !self.is_bound(index) {
                    let outcome = self.answer_judged(asked, there);
                    self.turn_to_value(index);
                    return Some(outcome);
                }
                self.turn_to_value(index);
                continue;
            }
            // What stands already belongs to the value that it was worked with; what follows from it
            // at another one is wrong at both.
            if self.is_bound(index) {
                self.turn_to_value(index);
                if matches!(there.truth, Truth::Follows(_)) || !there.evidence.follows.is_empty() {
                    continue;
                }
                return Some(self.said_of_value(
                    "general.value.elsewhere",
                    sought,
                    Prose::default(),
                ));
            }
            return Some(self.answer_turned(asked, there, sought));
        }
        self.answer_beside(sought, judgement)
    }

    /// The answer to a value whose size holds here and whose sign is that of another value of what
    /// is sought; `None` where there is none, or what stands belongs to this one.
    fn answer_of_the_same_sign(
        &mut self,
        asked: StepId,
        line: &str,
        judgement: &Judgement,
    ) -> Option<Outcome> {
        let (_, sought) = self.key.general.as_ref()?.sought?;
        for index in 0..self.others.len() {
            if !self.turn_to_value(index) {
                continue;
            }
            let there = self.judged_told(asked, line);
            let is_same = there.target == judgement.target
                && there.stands()
                && !there.remarks.contains(&Remark::OppositeSense);
            if is_same && !self.is_bound(index) {
                return Some(self.answer_turned(asked, there, sought));
            }
            self.turn_to_value(index);
        }
        None
    }

    /// The answer to a line of the value of what is sought that was turned to; the working stays
    /// with it.
    fn answer_turned(&mut self, asked: StepId, there: Judgement, sought: StepId) -> Outcome {
        self.settle_anew();
        self.instances = general_instances(&self.key, &self.sampling);
        let is_value = there.target == sought;
        let mut outcome = self.answer_judged(asked, there);
        if !is_value {
            let turned = self
                .words
                .say("general.value.turned", &self.name_of(sought));
            outcome.message = outcome.message.then(turned);
        }
        outcome
    }

    /// The answer to a line that tells several values of what is sought, each of them true.
    pub(super) fn answer_with_all_values(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let (_, sought) = self.key.general.as_ref()?.sought?;
        if self.others.iter().all(|other| other.worked.is_none()) {
            return None;
        }
        let between = self.words.word("general.value.between");
        let parts = between
            .split(';')
            .find_map(|word| line.split_once(&format!(" {} ", word.trim())))
            .or_else(|| line.split_once(';'))?;
        let both = [parts.0.trim(), parts.1.trim()];
        let at: Vec<Vec<usize>> = both
            .iter()
            .map(|part| self.values_at(asked, part, sought))
            .collect();
        let apart = at[0]
            .iter()
            .any(|one| at[1].iter().any(|other| one != other));
        if !apart {
            return None;
        }
        let judgement = self.judged_told(asked, both[0]);
        let elsewhere = self.answer_at_another_value(asked, both[0], &judgement);
        let mut outcome = elsewhere.unwrap_or_else(|| self.answer_judged(asked, judgement));
        if outcome.sign != Sign::Noted {
            let both = self.words.say("general.value.both", &self.name_of(sought));
            outcome.message = outcome.message.then(both);
        }
        Some(outcome)
    }

    /// That what is sought has another value, where a line has told one.
    pub(super) fn tell_other_value(&self, outcome: &mut Outcome) {
        let sought = self.key.general.as_ref().and_then(|general| general.sought);
        let told = sought.filter(|(_, step)| outcome.progress.contains(step));
        let another = self.others.iter().any(|other| other.but == But::Nothing);
        if let Some((_, step)) = told.filter(|_| another) {
            let also = self.words.say("general.value.also", &self.name_of(step));
            outcome.message = std::mem::take(&mut outcome.message).then(also);
        }
    }

    /// The values, by their place, 0 for the one in force, at which a text tells what is sought.
    fn values_at(&mut self, asked: StepId, text: &str, sought: StepId) -> Vec<usize> {
        let holds = |session: &Session| {
            let found = session.judged(asked, text);
            let alone = session.judged(sought, text);
            let right = |found: &Judgement| found.truth.holds() && found.target == sought;
            right(&found) || right(&alone)
        };
        let mut found: Vec<usize> = holds(self).then_some(0).into_iter().collect();
        for index in 0..self.others.len() {
            if self.turn_to_value(index) {
                found.extend(holds(self).then_some(index + 1));
                self.turn_to_value(index);
            }
        }
        found
    }

    /// Exchanges the working in force with that at another value; twice leaves all as it was. False
    /// where there is none.
    fn turn_to_value(&mut self, index: usize) -> bool {
        let Some((_, sought)) = self.key.general.as_ref().and_then(|general| general.sought) else {
            return false;
        };
        let now = self.key.value(sought, self.sampling.own(), &Pins::new());
        let Some(other) = self.others.get_mut(index) else {
            return false;
        };
        let Some((key, sampling)) = &mut other.worked else {
            return false;
        };
        std::mem::swap(&mut self.key, key);
        std::mem::swap(&mut self.sampling, sampling);
        if let Some(now) = now {
            other.value = now;
        }
        self.turn_to_asked();
        true
    }

    /// True if a value of hers stands that is another one at the value of what is sought that was
    /// turned to.
    fn is_bound(&self, before: usize) -> bool {
        let Some((key, sampling)) = self.others.get(before).and_then(|one| one.worked.as_ref())
        else {
            return false;
        };
        let value = |(key, sampling): (&Key, &Sampling), id: StepId| {
            key.value(id, sampling.own(), &Pins::new())
        };
        let differs = |id: StepId| {
            let one = value((key, sampling), id);
            let other = value((&self.key, &self.sampling), id);
            one.zip(other)
                .is_some_and(|(one, other)| (one - other).abs() > SAME * one.abs().max(other.abs()))
        };
        let told = |own: &Own| own.right && !own.relation && own.line > 0;
        let mut standing = self.state.standing.iter();
        standing.any(|(id, own)| told(own) && !id.is_balance() && differs(*id))
            || self.has_balance_of_the_other()
    }

    /// True if a balance of hers was told that does not hold at the value that was turned to.
    fn has_balance_of_the_other(&self) -> bool {
        let reached = self.state.reached.iter();
        let mut told = reached.filter_map(|(id, (progress, line))| {
            let done = id.is_balance() && *progress == Progress::Done;
            let view = line.and_then(|line| self.state.lines.get(line));
            view.filter(|_| done).map(|view| (*id, view.text.as_str()))
        });
        told.any(|(id, text)| !self.judged(id, text).stands())
    }

    /// Lets what stands rightly stand as it is at the value of what is sought that was turned to.
    fn settle_anew(&mut self) {
        for (id, own) in &mut self.state.standing {
            let function = self.key.samples(*id, &self.sampling, &Default::default());
            if let Some(function) = function.filter(|_| own.right && !id.is_balance()) {
                if (own.function[0] - function[0]).abs() > SAME * function[0].abs() {
                    own.value = function[0];
                    own.typed = None;
                }
                own.function = function;
            }
        }
    }

    /// A number that solves the equations, and is not asked for.
    fn answer_beside(&self, sought: StepId, judgement: &Judgement) -> Option<Outcome> {
        if judgement.target != sought {
            return None;
        }
        let typed = judgement.evidence.number?;
        let near = |value: f64| (typed.value - value).abs() <= NEAR * value.abs();
        let other = self.others.iter().find(|other| near(other.value))?;
        Some(match &other.but {
            But::Nothing => self.said_of_value("general.value.elsewhere", sought, Prose::default()),
            But::Unstable => self.said_of_value("general.value.unstable", sought, Prose::default()),
            But::CannotBe(why) => {
                let why = Prose::plain(why.clone());
                self.said_of_value("general.value.cannot-be", sought, why)
            }
        })
    }

    fn said_of_value(&self, key: &str, sought: StepId, why: Prose) -> Outcome {
        let mut slots = self.name_of(sought).to_vec();
        slots.push(("why", Slot::Word(why.to_string())));
        let message = self.words.say(key, &slots);
        Outcome::noted(message)
    }

    fn name_of(&self, sought: StepId) -> [(&'static str, Slot); 1] {
        let step = self.key.step(sought);
        let symbol = step.map_or_else(String::new, |step| step.symbol.shown());
        [("symbol", Slot::Name(symbol))]
    }
}
