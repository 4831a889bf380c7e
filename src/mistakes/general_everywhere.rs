//! One thought in every formula of a general working at once: who takes masses for weights mostly does
//! so for all of them. Source: common practice, no source.

use super::{Instance, Mistake, Scope, mass_for_weight, not_resolved, sine_cosine_exchanged};
use crate::key::{Atom, Formula, Key, Rule, StepId};
use std::collections::BTreeMap;

/// Thoughts that are mostly made in all places.
static OF_HABIT: [&Mistake; 3] = [
    &mass_for_weight::MISTAKE,
    &sine_cosine_exchanged::MISTAKE,
    &not_resolved::MISTAKE,
];

/// The single mistakes put together, each thought in all the formulas that a balance rests on, written
/// out in that balance.
pub(super) fn everywhere(right: &Key, single: &[Instance]) -> Vec<Instance> {
    let steps = right.steps.iter();
    let balances = steps.filter_map(|step| match &step.rule {
        Rule::Balance(balance) => Some((step.id, balance)),
        _ => None,
    });
    let balances: Vec<_> = balances.collect();
    let mut found = Vec::new();
    for mistake in OF_HABIT {
        let made = single.iter().filter(|one| one.mistake.id == mistake.id);
        let formulas = made.filter_map(|one| {
            let formula = formula_of(&one.key, one.shows_at)?;
            Some((one.shows_at, formula.clone()))
        });
        let wrong: BTreeMap<StepId, Formula> = formulas.collect();
        for (at, balance) in &balances {
            let made = right.inputs(*at).into_iter();
            let changed = made.filter(|input| rests_on(right, &wrong, *input)).count();
            if changed < 2 {
                continue;
            }
            let mut balance = (*balance).clone();
            for term in &mut balance.terms {
                term.amount = written_out(right, &wrong, &term.amount);
            }
            found.push(Instance {
                mistake,
                scope: Scope::Everywhere,
                key: right.with_rule(*at, Rule::Balance(balance)),
                shows_at: *at,
            });
        }
    }
    found
}

/// True for a step whose formula is wrong, or has one in it that is.
fn rests_on(key: &Key, wrong: &BTreeMap<StepId, Formula>, step: StepId) -> bool {
    let inside = || formula_of(key, step).map(Formula::inputs);
    wrong.contains_key(&step)
        || inside().is_some_and(|all| all.into_iter().any(|step| rests_on(key, wrong, step)))
}

/// The formula of a step; what a balance gives has none.
fn formula_of(key: &Key, step: StepId) -> Option<&Formula> {
    match &key.step(step)?.rule {
        Rule::Formula(formula) => Some(formula),
        _ => None,
    }
}

/// A formula with the wrong ones in the place of the steps that they are of.
fn written_out(key: &Key, wrong: &BTreeMap<StepId, Formula>, formula: &Formula) -> Formula {
    formula.rewrite(&|part| match part {
        Formula::Atom(Atom::Step(step)) if rests_on(key, wrong, *step) => {
            let of = wrong.get(step).or_else(|| formula_of(key, *step))?;
            Some(written_out(key, wrong, of))
        }
        _ => None,
    })
}
