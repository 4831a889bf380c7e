//! Mistakes in a general working: what can be rewritten in any formula and any balance.
//!
//! They are the same thoughts as those of the catalogue, made in one step. Only a typed form names
//! one; a value of a general working has too many neighbours.

use super::general_balances::wrong_balances;
use super::general_everywhere::everywhere;
use super::general_formulas::{limiting, wrong_formulas};
use super::{Instance, Kind, Mistake, Scope, Skill};
use crate::key::{Balance, Formula, Key, Pins, Rule, Samples, Sampling, StepId, Term, agree};
use std::collections::BTreeMap;

/// A mistake that only general workings allow: it is made there in one step, and in no lesson.
pub(super) const fn general_only(
    id: &'static str,
    family: &'static str,
    skill: Skill,
    prior: f64,
) -> Mistake {
    Mistake {
        id,
        family,
        kind: Kind::Formula,
        skill,
        prior,
        common: false,
        sign: None,
        scopes: |_, _| Vec::new(),
        rewrite: |_, _, _| None,
    }
}

/// Every such mistake that changes something.
pub fn general_instances(key: &Key, sampling: &Sampling) -> Vec<Instance> {
    let mut found = Vec::new();
    for step in &key.steps {
        match &step.rule {
            Rule::Formula(formula) => of_formula(key, sampling, step.id, formula, &mut found),
            Rule::Balance(_) => of_balance(key, sampling, step.id, &mut found),
            _ => {
                if let Some((mistake, taken)) = limiting(key, step.id) {
                    put(key, sampling, (mistake, step.id, taken), &mut found);
                }
            }
        }
    }
    let everywhere = everywhere(key, &found).into_iter();
    found.extend(everywhere.filter(|one| differs(key, &one.key, one.shows_at, sampling)));
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
        put(key, sampling, (mistake, at, wrong), found);
    }
}

/// Keeps a mistake in a formula if it changes something.
fn put(
    key: &Key,
    sampling: &Sampling,
    (mistake, at, wrong): (&'static Mistake, StepId, Formula),
    found: &mut Vec<Instance>,
) {
    let wrong = key.with_rule(at, Rule::Formula(wrong));
    if differs(key, &wrong, at, sampling) {
        found.push(instance(mistake, at, wrong));
    }
}

fn of_balance(key: &Key, sampling: &Sampling, at: StepId, found: &mut Vec<Instance>) {
    let Some(unknown) = key.gives(at) else {
        return;
    };
    for (mistake, wrong) in wrong_balances(key, at, unknown) {
        if !is_seen(key, sampling, (at, &wrong)) {
            continue;
        }
        let wrong = key.with_rule(at, Rule::Balance(wrong));
        if differs(key, &wrong, at, sampling) {
            found.push(instance(mistake, at, wrong));
        }
    }
}

/// False where a term that was changed comes to the same at the problem's own numbers: a distance of
/// one metre that is missing is not seen.
fn is_seen(key: &Key, sampling: &Sampling, (at, wrong): (StepId, &Balance)) -> bool {
    let Some(right) = key
        .balance(at)
        .filter(|right| right.terms.len() == wrong.terms.len())
    else {
        return true;
    };
    let value = |term: &Term| key.evaluate(&term.amount, sampling.own(), &Pins::new());
    right.terms.iter().zip(&wrong.terms).all(|(one, other)| {
        let same = value(one).zip(value(other));
        one == other
            || one.sign != other.sign
            || same.is_none_or(|(one, other)| (one - other).abs() > 1e-9 * one.abs())
    })
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
