//! A whole force where its component belongs.
//!
//! # What the learner did
//! Multiplied the whole force by the distance along the body, without taking the component across
//! the body.
//!
//! # Why it tempts
//! On a level body with upright forces that is right, and those examples come first.
//!
//! # Rewrite
//! Formula: the component across the body becomes the force itself, for one force, all weights, or
//! all.
//!
//! # Known false alarms
//! A learner who resolves the distance instead of the force is right; the balance shows it.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::with_across;
use super::{Kind, Mistake, NOT_RESOLVED, Scope, Skill, covered, every_scope};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "not-resolved",
    family: NOT_RESOLVED,
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 9.0,
    common: true,
    sign: None,
    scopes: |problem, key| every_scope(problem, key, StepId::Across),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = covered(problem, key, scope, StepId::Across);
    Some(with_across(problem, key, &forces, |size, _| size))
}
