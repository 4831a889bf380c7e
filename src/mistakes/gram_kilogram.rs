//! A mass in the wrong multiple of its unit.
//!
//! # What the learner did
//! Turned kilograms into grams, and multiplied the number by g.
//!
//! # Why it tempts
//! Masses are weighed in grams at a scale, and newtons go with kilograms only.
//!
//! # Rewrite
//! Formula: the mass of a weight times a thousand.
//!
//! # Known false alarms
//! The thousandth part of a weight, as a bare number, is the weight in kilonewtons: that holds.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::only;
use super::{Kind, Mistake, Scope, Skill, covered};
use crate::key::{Atom, Formula, Key, StepId};
use crate::problem::Problem;

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
        weights.into_iter().map(Scope::Force).collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let weight = StepId::Weight(only(scope)?);
    Some(key.with_formula(weight, &|node| match node {
        Formula::Atom(Atom::Given(_)) => Some(Formula::Number(1000.0).times(node.clone())),
        _ => None,
    }))
}
