//! The angle from the other axis.
//!
//! # What the learner did
//! Took the level part over the upright one, which gives the angle with the vertical.
//!
//! # Why it tempts
//! Which part is over the other is remembered, not read from the triangle.
//!
//! # Rewrite
//! Formula: the fraction in the direction is turned over.
//!
//! # Known false alarms
//! A learner who states the angle with the vertical, and says so, is right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::support;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Part, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "arctangent-inverted",
    family: "resultant-angle",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        support(key)
            .map(|id| StepId::Reaction(id, Part::Direction))
            .filter(|id| key.step(*id).is_some())
            .map(Scope::Here)
            .into_iter()
            .collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(step) = scope else {
        return None;
    };
    Some(key.with_formula(step, &|node| match node {
        Formula::ArcTangent(ratio) => match ratio.bare() {
            Formula::Quotient(over, under) => Some(Formula::ArcTangent(Box::new(
                under.as_ref().clone().over(over.as_ref().clone()),
            ))),
            _ => None,
        },
        _ => None,
    }))
}
