//! Divided by the ratio.
//!
//! # What the learner did
//! Divided the force by the sine where it must be multiplied, so that the component comes out
//! larger than the force.
//!
//! # Why it tempts
//! In the triangle of lengths the long side is often the one looked for; here it is the one known.
//!
//! # Rewrite
//! Formula: the component across the body, for one force, all weights, or all.
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
    id: "hypotenuse-confused",
    family: "divides-for-multiplies",
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 4.0,
    common: true,
    sign: Some(Sign::OverRatio),
    scopes: |problem, key| every_scope(problem, key, StepId::Across),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = covered(problem, key, scope, StepId::Across);
    Some(with_across(problem, key, &forces, Formula::over))
}
