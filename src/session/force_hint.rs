//! Hints at the first step: about one force at a time, never about all of them.

use super::turn::Progress;
use super::{Outcome, Session};
use crate::hint::{STAGES, force_line, hint, sister_force};
use crate::key::StepId;
use crate::problem::ForceId;
use crate::text::{Prose, Slot};

impl Session {
    /// The next hint about the force at hand: the one still to be placed, or the next not named.
    pub(super) fn hint_at_a_force(&mut self, stage: u8) -> Outcome {
        self.note_hint(StepId::Forces, stage);
        match self.force_at_hand() {
            Some(force) if stage == STAGES => self.tell_force(force),
            Some(force) => self.hint_given(stage, self.force_hint(force, stage)),
            None => Outcome::talk(Prose::default()),
        }
    }

    fn force_at_hand(&self) -> Option<ForceId> {
        let pending = self.state.pending.first().map(|pending| pending.force);
        let forces = self.problem.forces().into_iter().map(|force| force.id);
        pending.or_else(|| forces.into_iter().find(|id| !self.state.named.contains(id)))
    }

    fn force_hint(&self, force: ForceId, stage: u8) -> Prose {
        let kind = match (self.state.pending.first(), force) {
            (Some(_), _) => "pending",
            (None, ForceId::OwnWeight) => "own-weight",
            (None, ForceId::Load(_)) => "load",
            (None, ForceId::Rope(_)) => "rope",
            (None, ForceId::Support(_)) => "hinge",
        };
        // Only of the force still to be placed is its name no answer.
        let told = |stage: &str| {
            let key = format!("hint.forces.{kind}.{stage}");
            self.words.say(&key, &self.force_slots(force))
        };
        match stage {
            1 => told("look"),
            2 => told("place"),
            _ => self
                .sister_case()
                .and_then(|sister| sister_force(&self.words, &self.case(), &sister, force))
                .unwrap_or_else(|| {
                    hint(&self.words, &self.case(), StepId::Forces, None, None, stage)
                }),
        }
    }

    /// Tells one force; the walk stays at the forces while another is missing.
    fn tell_force(&mut self, force: ForceId) -> Outcome {
        let prose = force_line(&self.words, &self.case(), force);
        self.state.pending.retain(|pending| pending.force != force);
        self.state.name(force);
        self.state.hint_stage = 0;
        let mut message = self.words.say("talk.force-shown", &self.force_slots(force));
        if self.state.named.len() == self.problem.forces().len() {
            let count = [("count", Slot::Word(self.state.named.len().to_string()))];
            message = message.then(self.words.say("talk.forces-complete", &count));
            self.reach(StepId::Forces, Progress::Passed);
        }
        let mut outcome = Outcome::talk(message);
        outcome.truth = "shown";
        outcome.hint = Some((STAGES, prose));
        outcome
    }
}
