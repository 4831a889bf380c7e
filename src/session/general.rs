//! The walk through a problem of bodies in general: the same session over the key of its working.

use super::Session;
use super::before::Before;
use super::state::State;
use crate::diagnosis::{Because, Diagnosis};
use crate::key::StepId;
use crate::mistakes::general_instances;
use crate::problem::{Problem, Support, SupportKind};
use crate::sketch::Sheet;
use crate::system::System;
use crate::text::{Prose, Slot, Words};
use crate::working::{Underivable, walk};
use std::sync::Arc;

impl Session {
    /// Opens a problem of bodies in general.
    ///
    /// # Errors
    /// Why it cannot be worked.
    pub fn start_general(system: &System, words: Words) -> Result<Session, Underivable> {
        let walk = walk(system)?;
        let instances = general_instances(&walk.key, &walk.sampling);
        let scene = super::scene::scene(system, &words);
        let mut session = Session {
            problem: walk.page,
            key: walk.key,
            sampling: walk.sampling,
            instances,
            sister: None,
            words,
            scene,
            sheet: Sheet::of(system).map(Arc::new),
            system: Some(Arc::new(system.clone())),
            straight: super::lies::straight_bodies(system),
            lengthwise: super::lengthwise::Lengthwise::of(system),
            members: super::member_length::members(system),
            others: walk.others,
            state: State::new(),
            before: Before::default(),
        };
        session.turn_to_asked();
        Ok(session)
    }

    /// Opens a problem of one straight body that has no guided working as one of bodies in
    /// general; it is drawn as it was told.
    ///
    /// # Errors
    /// Why it cannot be worked.
    pub fn start_straight(problem: &Problem, words: Words) -> Result<Session, Underivable> {
        let mut session = Session::start_general(&System::of(problem), words)?;
        let built_in = |support: &Support| support.kind == SupportKind::BuiltIn;
        // The couple of a built-in end stands in no problem of a lesson.
        if !problem.supports().iter().any(built_in) {
            session.sheet = Some(Arc::new(Sheet::of_problem(problem)));
        }
        Ok(session)
    }

    /// True for a problem of bodies in general.
    pub(super) fn is_general(&self) -> bool {
        self.key.general.is_some()
    }

    /// Turns the key to the unknown that is worked towards now.
    pub(super) fn turn_to_asked(&mut self) {
        self.before.clear();
        let Some(asked) = self.asked() else {
            return;
        };
        let standing = &self.state.standing;
        let reached = &self.state.reached;
        let found = |id: StepId| standing.contains_key(&id) || reached.contains_key(&id);
        self.key.turn_to(asked, &found);
    }

    /// True once everything is found that the problem asks for.
    pub(super) fn has_wanted(&self) -> Option<bool> {
        let general = self.key.general.as_ref()?;
        let found = |id: &StepId| self.state.reached.contains_key(id);
        Some(!general.wanted.is_empty() && general.wanted.iter().all(found))
    }

    /// What the problem asks for and is not found yet, in names; `None` where it is no problem of
    /// bodies in general.
    pub(super) fn still_wanted(&self) -> Option<String> {
        let wanted = self.key.general.as_ref()?.wanted.iter();
        let open = wanted.filter(|id| !self.state.reached.contains_key(id));
        let named = open.filter_map(|id| {
            let slots = [
                ("symbol", Slot::Name(self.key.step(*id)?.symbol.shown())),
                ("title", Slot::Word(self.title(*id))),
            ];
            Some(self.words.say("general.wanted", &slots).to_string())
        });
        let named: Vec<String> = named.collect();
        (!named.is_empty()).then(|| named.join(", "))
    }

    /// True for the push of a contact, which no rope makes.
    pub(super) fn is_push(&self, step: StepId) -> bool {
        let heading = self.key.heading(step);
        heading.is_some_and(|heading| heading.kind == "push")
    }

    /// True for what acts between two bodies: it points one way on the one and the other way on the
    /// other.
    pub(super) fn acts_on_two(&self, step: StepId) -> bool {
        let general = self.key.general.as_ref();
        general.is_some_and(|general| general.between.contains_key(&step))
    }

    /// In a general working only a typed form names a mistake: a value has too many neighbours.
    pub(super) fn form_only(&self, diagnosis: &mut Diagnosis) {
        if self.is_general() {
            diagnosis
                .named
                .retain(|named| named.because == Because::Form);
        }
    }

    /// True for a multiple of an unknown that is not found yet.
    pub(super) fn is_open_multiple(&self, step: StepId) -> bool {
        let general = self.key.general.as_ref();
        let unknown = general.and_then(|general| general.multiples.get(&step));
        unknown.is_some_and(|unknown| !self.state.standing.contains_key(unknown))
    }

    /// True for an unknown of the stage that is worked at now.
    pub(super) fn is_near(&self, step: StepId) -> bool {
        let Some(general) = &self.key.general else {
            return false;
        };
        let now = self.asked().and_then(|asked| general.stage_of.get(&asked));
        let stage = now.and_then(|now| general.stages.get(*now));
        let in_stage = stage.is_some_and(|stage| stage.unknowns.contains(&step));
        let made_of = self.asked().map(|asked| self.key.open_in(asked));
        in_stage || made_of.is_some_and(|open| open.contains(&step))
    }

    /// The stable word of a step of a general working: `weight:W_b`, `moments:2`.
    pub(super) fn general_step_name(&self, step: StepId) -> Option<String> {
        let heading = self.key.heading(step)?;
        Some(match step {
            StepId::Sum(stage, place) => format!("{}:{}.{}", heading.kind, stage + 1, place + 1),
            _ => {
                let symbol = &self.key.step(step)?.symbol;
                format!("{}:{}", heading.kind, symbol.as_str())
            }
        })
    }

    /// A balance that holds with unknowns of other balances in it.
    pub(super) fn general_still_unknown(&self, others: &[StepId]) -> Prose {
        let shown = others.iter().filter_map(|step| self.key.step(*step));
        let names: Vec<String> = shown.map(|step| step.symbol.shown()).collect();
        let asked = self
            .asked()
            .map_or_else(String::new, |step| self.title(step));
        let slots = [
            ("unknowns", Slot::Name(names.join(", "))),
            ("step", Slot::Word(asked)),
        ];
        self.words.say("general.holds-unknowns", &slots)
    }

    /// A balance that says no more than those that stand.
    pub(super) fn general_said_already(&self, there: StepId) -> Prose {
        if self.is_free() {
            return self.words.say("general.said-already-freely", &[]);
        }
        let asked = self
            .asked()
            .map_or_else(String::new, |step| self.title(step));
        let slots = [
            ("other", Slot::Word(self.title(there))),
            ("step", Slot::Word(asked)),
        ];
        self.words.say("general.said-already", &slots)
    }

    /// Every term of a balance counted with one sign.
    pub(super) fn general_same_turn(
        &self,
        target: StepId,
        both_ways: bool,
        of_forces: bool,
    ) -> Prose {
        let heading = self.key.heading(target).cloned().unwrap_or_default();
        let slots = [
            ("body", Slot::Word(heading.bodies.join(", "))),
            ("pivot", Slot::Word(heading.spot)),
        ];
        match heading.kind {
            "moments" if both_ways && !of_forces => self.words.say("general.sign-of-turn", &slots),
            _ if both_ways => self.words.say("general.sign-of-way", &slots),
            "moments" if !of_forces => self.words.say("talk.same-turn", &slots),
            _ => self.words.say("general.same-way", &slots),
        }
    }

    /// What a passed balance says: nothing of its own, but the next must say something else.
    pub(super) fn passed_balance(&mut self, asked: StepId) {
        if !asked.is_general() {
            return;
        }
        let own = crate::judge::Own::right([0.0; 4], 0);
        if self.key.gives(asked).is_none() {
            self.state.standing.insert(asked, own);
        }
    }

    /// A thought about a line of a general working.
    pub(super) fn general_thought(&self, instance: usize, target: StepId) -> Prose {
        let instance = &self.instances[instance];
        let slots = [("step", Slot::Word(self.title(target)))];
        let id = instance.mistake.id;
        self.words.say(&format!("general.thought.{id}"), &slots)
    }
}
