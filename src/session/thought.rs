//! The thought behind a line in words, and two of them made in one line.

use super::Session;
use crate::diagnosis::{Because, Diagnosis, Named, Voice};
use crate::hint::spoken_force;
use crate::judge::Judgement;
use crate::key::{Part, StepId};
use crate::mistakes::{Scope, Skill};
use crate::problem::ForceId;
use crate::text::{Prose, Slot};

/// The hinge's force forgotten among the upright ones, and moments without their distances.
const WITHOUT_HINGE: &str = "hinge-forgotten";
const WITHOUT_DISTANCES: &str = "forces-for-moments";

impl Session {
    /// Where no moments are asked, forces that are added without the hinge's are told as that, though on
    /// a level body they have the form of moments without distances. Of whole forces set equal as they
    /// are nobody can tell which was meant.
    pub(super) fn forces_first(&self, judgement: &Judgement, diagnosis: &mut Diagnosis) {
        let layout = judgement.layout.as_deref().unwrap_or_default();
        let one_side = layout.ends_with("= 0") || layout.starts_with("0 =");
        let whole = judgement.evidence.unresolved && !judgement.evidence.names_parts && !one_side;
        if !self.is_free() || whole || !diagnosis.is_by_form() {
            return;
        }
        let Some(named) = diagnosis.named.first_mut() else {
            return;
        };
        let id = |index: usize| self.instances[index].mistake.id;
        let hinge = named.alike.iter().position(|one| id(*one) == WITHOUT_HINGE);
        if let Some(at) = hinge.filter(|_| id(named.instance) == WITHOUT_DISTANCES) {
            std::mem::swap(&mut named.instance, &mut named.alike[at]);
        }
    }

    /// The thought to speak about, and the one that was made in the same line.
    pub(super) fn thoughts_told(
        &self,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
        spoken: &Named,
    ) -> Prose {
        let thought = self.thought(judgement, spoken);
        match diagnosis.named.as_slice() {
            [_, second] if diagnosis.together => {
                let id = |named: &Named| self.instances[named.instance].mistake.id;
                let key = match id(spoken) == id(second) {
                    _ if spoken.voice == Voice::Perhaps => "talk.perhaps-two",
                    true => "talk.one-thought-twice",
                    false => "talk.two-thoughts",
                };
                let second = self.thought(judgement, second);
                let both = self.words.say(key, &[]);
                both.then(thought).then(second)
            }
            _ => thought,
        }
    }

    /// The thought behind a line, flatly or with "perhaps".
    pub(super) fn thought(&self, judgement: &Judgement, named: &Named) -> Prose {
        let instance = &self.instances[named.instance];
        let target = judgement.target;
        if self.is_general() {
            return self.general_thought(named.instance, target);
        }
        let force = spoken_force(instance, target);
        let symbol =
            |force: Option<ForceId>| match force.and_then(|force| self.problem.force(force)) {
                Some(force) if !self.is_unsaid(force.id) => force.symbol.shown(),
                _ => self.words.word("hint.each-force"),
            };
        let wrong = self.wrong_formula(judgement, named, force);
        let slots = [
            ("force", Slot::Name(symbol(force))),
            ("other", Slot::Name(symbol(instance.other_force()))),
            ("body", Slot::Word(self.problem.body().noun.clone())),
            ("wrong", Slot::Value(wrong)),
            ("step", Slot::Word(self.title(target))),
        ];
        // At a part along an axis the triangle is another one; a typed radian is spoken of itself.
        let id = instance.mistake.id;
        let part = format!("mistake.{id}.thought-part");
        let all = format!("mistake.{id}.thought-all");
        let radian = instance.mistake.skill == Skill::Numbers && named.because == Because::Unit;
        let key = match target {
            _ if radian => "talk.radians".to_owned(),
            StepId::Reaction(..) | StepId::PartOf(..) if self.words.has(&part) => part,
            _ if instance.scope == Scope::Everywhere && self.words.has(&all) => all,
            _ => format!("mistake.{id}.thought"),
        };
        let thought = self.words.say(&key, &slots);
        match (named.voice, named.because) {
            (Voice::Flat, Because::Sum) => self.words.say("talk.sum-first", &[]).then(thought),
            (Voice::Flat, _) => thought,
            (Voice::Perhaps, _) => {
                let name = self
                    .words
                    .word(&format!("mistake.{}.name", instance.mistake.id));
                // At a later step a mistake of several forces is no matter of the first of them.
                let wide = matches!(instance.scope, Scope::Weights | Scope::Everywhere)
                    && (instance.shows_at != target || force.is_none());
                let angle = matches!(
                    target,
                    StepId::Angle(_) | StepId::Reaction(_, Part::Direction)
                );
                let key = match instance.mistake.skill {
                    Skill::Numbers if angle => "talk.perhaps-angle",
                    _ if wide => "talk.perhaps-several",
                    _ => "talk.perhaps",
                };
                let slots = [("mistake", Slot::Word(name)), ("force", slots[0].1.clone())];
                let told = self.words.say(key, &slots);
                match judgement.evidence.alone {
                    true => told.then(self.words.say("talk.number-alone", &[])),
                    false => told,
                }
            }
        }
    }

    /// Never true once the forces are named; a force that was not named is not told.
    fn is_unsaid(&self, force: ForceId) -> bool {
        let passed = self.state.reached.contains_key(&StepId::Forces);
        !passed && !self.state.named.contains(&force)
    }
}
