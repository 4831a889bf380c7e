//! Mistakes in a general working: what can be rewritten in any formula and any balance.
//!
//! They are the same thoughts as those of the catalogue, made in one step. Only a typed form names
//! one; a value of a general working has too many neighbours.

use super::general_formulas::wrong_formulas;
use super::{Instance, Mistake, Scope, term_left_out, turns_the_wrong_way};
use crate::key::{Formula, Key, Rule, Samples, Sampling, StepId, Term, agree};
use std::collections::BTreeMap;

/// Every such mistake that changes something.
pub fn general_instances(key: &Key, sampling: &Sampling) -> Vec<Instance> {
    let mut found = Vec::new();
    for step in &key.steps {
        match &step.rule {
            Rule::Formula(formula) => of_formula(key, sampling, step.id, formula, &mut found),
            Rule::Balance(_) => of_balance(key, sampling, step.id, &mut found),
            _ => {}
        }
    }
    found
}

fn instance(mistake: &'static Mistake, at: StepId, key: Key) -> Instance {
    Instance {
        mistake,
        scope: Scope::Here(at),
        key,
        shows_at: at,
    }
}

fn of_formula(
    key: &Key,
    sampling: &Sampling,
    at: StepId,
    formula: &Formula,
    found: &mut Vec<Instance>,
) {
    for (mistake, wrong) in wrong_formulas(key, at, formula) {
        let wrong = key.with_rule(at, Rule::Formula(wrong));
        if differs(key, &wrong, at, sampling) {
            found.push(instance(mistake, at, wrong));
        }
    }
}

fn of_balance(key: &Key, sampling: &Sampling, at: StepId, found: &mut Vec<Instance>) {
    let (Some(balance), Some(unknown)) = (key.balance(at), key.gives(at)) else {
        return;
    };
    for (index, term) in balance.terms.iter().enumerate() {
        if key.holds(&term.amount, unknown) {
            continue;
        }
        let without = key.with_balance(at, |balance| {
            balance.terms.remove(index);
        });
        if differs(key, &without, at, sampling) {
            found.push(instance(&term_left_out::MISTAKE, at, without));
        }
        // Which way an unknown of either sense was taken to act is a matter of convention.
        let either = |id: &StepId| {
            id.has_free_sense() || key.open_in(*id).iter().any(|open| open.has_free_sense())
        };
        let is_either = |term: &Term| term.amount.inputs().iter().any(either);
        let others = balance.terms.iter().enumerate();
        let mut others = others.filter(|(other, _)| *other != index);
        if is_either(term) || others.all(|(_, other)| is_either(other)) {
            continue;
        }
        let turned = key.with_balance(at, |balance| {
            if let Some(term) = balance.terms.get_mut(index) {
                term.sign = -term.sign;
            }
        });
        if differs(key, &turned, at, sampling) {
            found.push(instance(&turns_the_wrong_way::MISTAKE, at, turned));
        }
    }
}

/// True if a rewritten key has another value at a step, and has one.
fn differs(right: &Key, wrong: &Key, at: StepId, sampling: &Sampling) -> bool {
    let none: BTreeMap<StepId, Samples> = BTreeMap::new();
    let of = |key: &Key| key.function(right, at, sampling, &none);
    match (of(right), of(wrong)) {
        (Some(right), Some(wrong)) => {
            let opposite = wrong.map(|value| -value);
            !agree(&right, &wrong) && !agree(&right, &opposite)
        }
        _ => false,
    }
}
