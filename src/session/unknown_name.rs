//! Names that nobody knows, and what they may not stand for.

use super::own_moment::OTHER_M;
use super::{Outcome, Session};
use crate::judge::{Judgement, is_part_along};
use crate::key::StepId;
use crate::text::Slot;
use crate::units::Dimension;

/// Words of a noun no longer than this tell no thing.
const SHORTEST: usize = 2;

impl Session {
    /// The step whose short names may be typed. Of several masses a bare `m` is in a free working none
    /// of them, once it was told as a mass or a moment of her own.
    pub(super) fn asked_by_names(&self) -> Option<StepId> {
        let asked = self.asked()?;
        let Some(freely) = self.state.freely.as_ref() else {
            return Some(asked);
        };
        let givens = self.problem.givens().iter();
        let masses = givens.filter(|given| given.dimension == Dimension::MASS);
        let masses: Vec<f64> = masses.map(|given| given.value).collect();
        let hers = |name: &str| self.is_own_name(name);
        let all: f64 = masses.iter().sum();
        let first = masses.first().copied().unwrap_or_default();
        let told = || {
            let (name, _) = freely.now.split_once('=')?;
            let (_, value) = freely.now.rsplit_once('=')?;
            let (number, unit) = value.trim().split_once(' ').unwrap_or((value.trim(), ""));
            let number = number.replace(',', ".").parse::<f64>().ok();
            // As a mass it is that of all together or of another body; else one was misread.
            let whole = |number: f64| (number - all).abs() < 1e-9 * all;
            let hers = |number: f64| whole(number) || number != first && masses.contains(&number);
            let other = number.is_some_and(|number| !hers(number));
            let as_mass = name.trim() == "m" || unit.contains("kg");
            let is_bare = matches!(name.trim(), "m" | "M");
            (is_bare && !(as_mass && other)).then_some(())
        };
        let of_all = masses.len() > 1 && (hers("m") || hers("M") || told().is_some());
        (!of_all).then_some(asked)
    }

    /// True for a right value under a name that nobody knows and that looks like no name of it.
    pub(super) fn is_unknown_name(&self, judgement: &Judgement) -> bool {
        let Some((name, _)) = judgement.names.as_ref().filter(|_| judgement.truth.holds()) else {
            return false;
        };
        let latin = |c: char| if c == OTHER_M { 'm' } else { c };
        let first = |text: &str| text.chars().next().map(|c| latin(c).to_ascii_lowercase());
        let step = self.key.step(judgement.target);
        let symbol = step.map_or_else(String::new, |step| step.symbol.shown());
        let along = matches!(judgement.target, StepId::Across(_)) && is_part_along(name);
        first(name) != first(&symbol) || along || self.names_another(name, judgement.target)
    }

    /// True for a name that she has told for a multiple of the unknown.
    pub(super) fn knows_as_multiple(&self, judgement: &Judgement) -> bool {
        let name = judgement.names.as_ref().map(|(name, _)| name);
        let mut told = self.state.own_names.iter();
        name.is_some_and(|name| told.any(|(symbol, own)| own.of_unknown && symbol.matches(name)))
    }

    /// `weight of the dummy`, `Wdummy`: a name with the noun of another force in it.
    fn names_another(&self, name: &str, target: StepId) -> bool {
        let Some(own) = target.force().and_then(|id| self.problem.force(id)) else {
            return false;
        };
        let name = name.to_lowercase();
        let has = |noun: &str| {
            // `the bag` of a bag of gear, and its gear.
            let mut words = noun.split_whitespace().filter(|word| word.len() > SHORTEST);
            words.any(|word| name.contains(&word.to_lowercase()))
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
