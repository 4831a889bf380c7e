//! Tangent for sine.
//!
//! # What the learner did
//! Took the tangent of the angle for the component across the body.
//!
//! # Why it tempts
//! Tangent joins the two components, and both are drawn; the force itself is the third side.
//!
//! # Rewrite
//! Formula: the ratio of the component, for one force, all weights, or all.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::with_across;
use super::{Kind, Mistake, Scope, Sign, Skill, covered, every_scope};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "tangent-used",
    family: "wrong-ratio",
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 2.0,
    common: false,
    sign: Some(Sign::Tangent),
    scopes: |problem, key| every_scope(problem, key, StepId::Across),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = covered(problem, key, scope, StepId::Across);
    Some(with_across(problem, key, &forces, |size, ratio| {
        size.times(match ratio.bare() {
            Formula::Sine(angle) => Formula::Tangent(angle.clone()),
            _ => ratio,
        })
    }))
}
