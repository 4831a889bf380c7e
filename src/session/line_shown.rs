//! The line itself, shown: from the right values, or from her own where she goes on with these.

use super::{Outcome, Session};
use crate::hint::{Case, STAGES, hint};
use crate::judge::{Own, functions_of_own, nearest_inputs, pins_of_own};
use crate::key::{Key, Pins, StepId, agree};
use crate::text::{Slot, Words};
use std::collections::BTreeMap;

impl Session {
    /// The line itself; the walk goes on behind it.
    pub(super) fn show(&mut self, asked: StepId) -> Outcome {
        let prose = self.pass_shown(asked, |words, case| {
            hint(words, case, asked, None, None, STAGES)
        });
        let mut outcome = Outcome::talk(
            self.words
                .say("talk.shown", &[("step", Slot::Word(self.title(asked)))]),
        );
        outcome.truth = "shown";
        outcome.hint = Some((STAGES, prose));
        outcome
    }

    /// Passes a step of which the line is shown, and tells it from the values that stand.
    pub(super) fn pass_shown<T>(
        &mut self,
        asked: StepId,
        tell: impl Fn(&Words, &Case<'_>) -> T,
    ) -> T {
        let own = self.own_at(asked);
        let case = match &own {
            Some((pins, _)) => Case {
                key: self.own_key(asked),
                own: pins.clone(),
                ..self.case()
            },
            None => self.case(),
        };
        let told = tell(&self.words, &case);
        self.state.hinted.insert(asked, STAGES);
        self.pass_with(asked, own);
        self.take_as_said(asked);
        let next = self.state.next_number;
        if let Some(freely) = &mut self.state.freely {
            freely.shown.push((next, asked));
        }
        told
    }

    /// Passes a step whose line was shown in a free working once more, from what stands now.
    pub(super) fn pass_again(&mut self, shown: StepId) {
        let own = self.own_at(shown);
        self.pass_with(shown, own);
    }

    fn pass_with(&mut self, asked: StepId, own: Option<(Pins, Own)>) {
        self.pass(asked);
        if let Some((_, own)) = own.filter(|_| !asked.is_balance()) {
            self.state.standing.insert(asked, own);
        }
    }

    /// What follows at a step from her own wrong values, and these, where it is not what is right.
    fn own_at(&self, asked: StepId) -> Option<(Pins, Own)> {
        let (right, standing, sampling) = (&self.key, &self.state.standing, &self.sampling);
        let key = self.own_key(asked);
        let balance = right.sum_of(asked);
        let mut inputs = nearest_inputs(right, asked);
        for step in balance.iter().flat_map(|sum| nearest_inputs(right, *sum)) {
            if !inputs.contains(&step) {
                inputs.push(step);
            }
        }
        // What she told of the step itself is what the line is shown for, and what the line does not
        // rest on would only stand at its end.
        inputs.retain(|step| *step != asked);
        // What was shown of an unknown that is still a letter follows from its angle.
        let is_relation = |id: &StepId| standing.get(id).is_some_and(|own| own.relation);
        // What was refused just now is what help speaks of: `Hx = −Tx` after a wrong Tx.
        let refused = self.open_line().map(|open| open.judgement.target);
        let rests_on =
            |id: &StepId| inputs.contains(id) && !is_relation(id) && Some(*id) != refused;
        let mut functions = functions_of_own(right, standing, sampling);
        functions.retain(|id, _| rests_on(id));
        let function = key.function(right, asked, sampling, &functions)?;
        if agree(
            &function,
            &right.function(right, asked, sampling, &BTreeMap::new())?,
        ) {
            return None;
        }
        let wrong = |id: &StepId| standing.get(id).filter(|own| !own.right);
        let lines = inputs.iter().chain(&balance).filter_map(wrong);
        let line = lines.map(|own| own.line).max()?;
        let mut pins = pins_of_own(right, standing, sampling);
        pins.retain(|id, _| rests_on(id));
        let own = Own {
            line,
            value: key
                .value(asked, sampling.own(), &pins)
                .unwrap_or(function[0]),
            typed: None,
            function,
            right: false,
            against: false,
            relation: !self.is_number(asked),
        };
        Some((pins, own))
    }

    /// The key that a step is worked by: where the unknown is found, that of a wrong balance or
    /// component that she went on with.
    fn own_key(&self, asked: StepId) -> &Key {
        let finds = asked == StepId::MomentSum || matches!(asked, StepId::Pull(_));
        // Not that of the line in whose place this one is shown.
        let mut others = self.state.carried.iter().rev();
        let carried = others.find(|(step, _)| *step != asked).filter(|_| finds);
        carried.map_or(&self.key, |(_, key)| key)
    }
}
