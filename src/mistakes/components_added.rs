//! The parts added for the resultant.
//!
//! # What the learner did
//! Added the two parts of the hinge's force.
//!
//! # Why it tempts
//! Numbers that belong to one force are added as they are.
//!
//! # Rewrite
//! Formula: the size becomes the sum of the sizes of the parts.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::support;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, Part, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "components-added",
    family: "resultant",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |_, key| resultants(key),
    rewrite,
};

/// The size of the support's force, where it is worked out from two parts.
pub(super) fn resultants(key: &Key) -> Vec<Scope> {
    support(key)
        .map(|id| StepId::Reaction(id, Part::Size))
        .filter(|id| key.step(*id).is_some())
        .map(Scope::Here)
        .into_iter()
        .collect()
}

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(step @ StepId::Reaction(id, _)) = scope else {
        return None;
    };
    let part = |axis: Axis| {
        Formula::Absolute(Box::new(Formula::step(StepId::Reaction(
            id,
            Part::Along(axis),
        ))))
    };
    let sum = Formula::Sum(vec![part(Axis::Horizontal), part(Axis::Vertical)]);
    Some(key.with_rule(step, Rule::Formula(sum)))
}
