//! Two supports that share equally.
//!
//! # What the learner did
//! Gave the rope half of all weights, and the hinge the other half.
//!
//! # Why it tempts
//! Two supports look alike, and in the first examples everything stands in the middle.
//!
//! # Rewrite
//! Formula: an upright pull is half of all weights together.
//!
//! # Known false alarms
//! With every load in the middle and the rope at the far end it is right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{known_turning, pull, size, with_pull};
use super::{Kind, Mistake, SHARED_OUT, Scope, Skill};
use crate::key::{Axis, Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "shared-equally",
    family: SHARED_OUT,
    kind: Kind::Formula,
    skill: Skill::Moments,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let mut weights = known_turning(problem, key).into_iter();
        let all_weights = weights.all(|id| key.step(StepId::Weight(id)).is_some());
        let upright = key.step(StepId::ForceSum(Axis::Horizontal)).is_none();
        let has = all_weights && upright && pull(key).is_some();
        has.then_some(Scope::Pull).into_iter().collect()
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, _: Scope) -> Option<Key> {
    Some(with_pull(key, pull(key)?, half_of_all(problem, key)?))
}

/// Half of all weights together.
pub(super) fn half_of_all(problem: &Problem, key: &Key) -> Option<Formula> {
    let sizes: Option<Vec<Formula>> = known_turning(problem, key)
        .into_iter()
        .map(|id| size(problem, id))
        .collect();
    Some(Formula::Sum(sizes?).over(Formula::Number(2.0)))
}
