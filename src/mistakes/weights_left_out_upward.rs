//! No weights in the upright balance.
//!
//! # What the learner did
//! Set the upright parts of the rope's and the hinge's force against each other alone.
//!
//! # Why it tempts
//! In the level balance these two are all there is, and the upright one is written like it.
//!
//! # Rewrite
//! Balance: every weight leaves the vertical balance.
//!
//! # Known false alarms
//! With an upright rope the two forces set equal may as well be thought to share the weights.
//!
//! # Source
//! Common practice, no source.

use super::one_weight_only::weights;
use super::rewriting::{pull_along, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::Problem;

const BALANCE: StepId = StepId::ForceSum(Axis::Vertical);

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "weights-left-out-upward",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let oblique = pull_along(key, Axis::Vertical).is_some();
        let any = oblique && !weights(problem, key).is_empty();
        any.then_some(Scope::Here(BALANCE)).into_iter().collect()
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, _: Scope) -> Option<Key> {
    let leave = |key: Key, id| without_in(&key, BALANCE, id);
    Some(weights(problem, key).into_iter().fold(key.clone(), leave))
}
