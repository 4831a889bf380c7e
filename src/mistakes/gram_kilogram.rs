//! A mass in the wrong multiple of its unit.
//!
//! # What the learner did
//! Counted kilograms as grams, or turned them into grams, and multiplied the number by g.
//!
//! # Why it tempts
//! Masses are weighed in grams at a scale, and newtons go with kilograms only.
//!
//! # Rewrite
//! Formula: the mass of a weight times a thousand, or over a thousand.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::{Kind, Mistake, Scope, Skill, covered};
use crate::key::{Atom, Formula, Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "gram-kilogram",
    family: "unit-multiple",
    kind: Kind::Formula,
    skill: Skill::Weights,
    prior: 1.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let weights = covered(problem, key, Scope::Everywhere, StepId::Weight);
        let both = |id: ForceId| [Scope::Force(id), Scope::Here(StepId::Weight(id))];
        weights.into_iter().flat_map(both).collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let thousand = || Formula::Number(1000.0);
    let (weight, in_grams) = match scope {
        Scope::Force(id) => (StepId::Weight(id), true),
        Scope::Here(weight) => (weight, false),
        _ => return None,
    };
    Some(key.with_formula(weight, &|node| match node {
        Formula::Atom(Atom::Given(_)) if in_grams => Some(thousand().times(node.clone())),
        Formula::Atom(Atom::Given(_)) => Some(node.clone().over(thousand())),
        _ => None,
    }))
}
