//! A level or upright part found with the tangent.
//!
//! # What the learner did
//! Took the tangent for the sine or cosine that gives the part of a force along an axis.
//!
//! # Why it tempts
//! The two parts are the short sides of one triangle, and the tangent joins them.
//!
//! # Rewrite
//! Formula: the ratio in the part is the tangent of its angle.
//!
//! # Known false alarms
//! One part from the other is right to take the tangent; that is another line.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::parts_along;
use super::{Kind, Mistake, Scope, Sign, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "part-by-tangent",
    family: "wrong-ratio",
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 0.0,
    common: false,
    sign: Some(Sign::Tangent),
    scopes: |_, key| parts_along(key).map(Scope::Here).collect(),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(part @ StepId::PartOf(..)) = scope else {
        return None;
    };
    Some(key.with_formula(part, &|node| match node {
        Formula::Sine(angle) | Formula::Cosine(angle) => Some(Formula::Tangent(angle.clone())),
        _ => None,
    }))
}
