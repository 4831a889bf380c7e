//! The part of a formula that a mistake has changed, as the learner wrote it.

use super::Session;
use crate::diagnosis::Named;
use crate::judge::Judgement;
use crate::key::{Atom, Formula, Key, Part, Pins, StepId, difference, formula_names};
use crate::problem::ForceId;

/// A sine as the cosine of the other angle, or the reverse, where the line has only that one: a
/// learner who typed `cos β` did not write sin(90° − β).
fn in_typed_ratio(key: &Key, formula: &Formula, (sine, cosine): (bool, bool)) -> Formula {
    formula.rewrite(&|part| match part {
        Formula::Sine(angle) if cosine && !sine => {
            Some(Formula::Cosine(Box::new(complement(key, angle))))
        }
        Formula::Cosine(angle) if sine && !cosine => {
            Some(Formula::Sine(Box::new(complement(key, angle))))
        }
        _ => None,
    })
}

/// What an angle lacks to a right one: β for 90° − β.
fn complement(key: &Key, angle: &Formula) -> Formula {
    let written_out = match angle {
        Formula::Atom(Atom::Step(id @ StepId::Angle(_))) => key.formula(*id),
        _ => None,
    };
    match written_out.as_ref().unwrap_or(angle) {
        Formula::Sum(parts)
            if let [Formula::Degrees(90.0), Formula::Negative(other)] = parts.as_slice() =>
        {
            other.as_ref().clone()
        }
        _ => difference(Formula::Degrees(90.0), angle.clone()),
    }
}

/// The smallest part in which two formulas of the same shape differ.
fn changed_part(wrong: &Formula, right: &Formula) -> Option<Formula> {
    if wrong == right {
        return None;
    }
    let (mine, other) = (wrong.bare(), right.bare());
    let (parts, others) = (mine.children(), other.children());
    if std::mem::discriminant(mine) == std::mem::discriminant(other)
        && parts.len() == others.len()
        && !parts.is_empty()
    {
        let changed: Vec<_> = parts
            .iter()
            .zip(&others)
            .filter(|(mine, other)| mine != other)
            .collect();
        if let [(mine, other)] = changed.as_slice() {
            return changed_part(mine, other);
        }
    }
    Some(mine.clone())
}

impl Session {
    /// An angle as it is written: of two, the larger less the smaller.
    fn as_typed(&self, step: StepId, key: &Key, formula: Formula) -> Formula {
        let value = key.value(step, self.sampling.own(), &Pins::new());
        let negative = matches!(step, StepId::Angle(_)) && value.is_some_and(|value| value < 0.0);
        match formula.bare() {
            Formula::Sum(parts) if negative => match parts.as_slice() {
                [from, Formula::Negative(taken)] => difference(*taken.clone(), from.clone()),
                _ => formula,
            },
            _ => formula,
        }
    }

    /// The wrong part of the formula, in names: the changed ratio, angle or distance where the
    /// mistake changes one, else the whole.
    pub(super) fn wrong_formula(
        &self,
        judgement: &Judgement,
        named: &Named,
        force: Option<ForceId>,
    ) -> String {
        let instance = &self.instances[named.instance];
        let mut places = vec![judgement.target];
        if let StepId::Reaction(_, part) = judgement.target {
            let axis = match part {
                Part::Along(axis) => Some(axis),
                Part::Size | Part::Direction => None,
            };
            places.extend(self.key.steps.iter().map(|step| step.id).filter(
                |id| matches!(id, StepId::PartOf(_, of) if axis.is_none_or(|axis| axis == *of)),
            ));
        }
        // What is told of a force is how its own component comes out.
        if let (Some(force), false) = (force, matches!(judgement.target, StepId::Reaction(..))) {
            places.insert(0, StepId::Across(force));
        }
        places.push(instance.shows_at);
        for step in places {
            let (Some(wrong), Some(right)) = (instance.key.formula(step), self.key.formula(step))
            else {
                continue;
            };
            // An angle, a distance or a weight is told whole.
            let whole = matches!(
                step,
                StepId::Angle(_) | StepId::Distance(_) | StepId::Weight(_)
            );
            let changed = if whole {
                (wrong != right).then(|| self.as_typed(step, &instance.key, wrong))
            } else {
                changed_part(&wrong, &right)
            };
            if let Some(part) = changed {
                let part = in_typed_ratio(&instance.key, &part, judgement.evidence.ratios);
                return formula_names(&self.problem, &instance.key, &part);
            }
        }
        // The change may lie in an angle or a distance further up.
        let upstream = self.key.steps.iter().map(|step| step.id).find(|id| {
            matches!(
                id,
                StepId::Angle(_) | StepId::Distance(_) | StepId::Weight(_)
            ) && instance.key.formula(*id) != self.key.formula(*id)
        });
        let formula = |id| Some(self.as_typed(id, &instance.key, instance.key.formula(id)?));
        match upstream.and_then(formula) {
            Some(formula) => formula_names(&self.problem, &instance.key, &formula),
            None => self.title(judgement.target),
        }
    }
}
