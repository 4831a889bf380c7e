//! Names that nobody knows, and what they may not stand for.

use super::{Outcome, Session};
use crate::judge::{Judgement, is_part_along};
use crate::key::StepId;
use crate::text::Slot;

impl Session {
    /// True for a right value under a name that nobody knows and that looks like no name of it.
    pub(super) fn is_unknown_name(&self, judgement: &Judgement) -> bool {
        let Some((name, _)) = judgement.names.as_ref().filter(|_| judgement.truth.holds()) else {
            return false;
        };
        let first = |text: &str| text.chars().next().map(|c| c.to_ascii_lowercase());
        let step = self.key.step(judgement.target);
        let symbol = step.map_or_else(String::new, |step| step.symbol.shown());
        let along = matches!(judgement.target, StepId::Across(_)) && is_part_along(name);
        first(name) != first(&symbol) || along || self.names_another(name, judgement.target)
    }

    /// `weight of the dummy`, `Wdummy`: a name with the noun of another force in it.
    fn names_another(&self, name: &str, target: StepId) -> bool {
        let Some(own) = target.force().and_then(|id| self.problem.force(id)) else {
            return false;
        };
        let name = name.to_lowercase();
        let has = |noun: &str| {
            let last = noun.split_whitespace().last();
            last.is_some_and(|last| name.contains(&last.to_lowercase()))
        };
        let mut forces = self.problem.forces().into_iter();
        !has(own.noun) && forces.any(|force| force.noun != own.noun && has(force.noun))
    }

    /// Asks what a name stands for.
    pub(super) fn asks_whose_name(&self, judgement: &Judgement) -> Outcome {
        let name = judgement.names.as_ref().map(|(name, _)| name.clone());
        let slots = [("name", Slot::Name(name.unwrap_or_default()))];
        Outcome::noted(self.words.say("talk.freely-which", &slots))
    }
}
