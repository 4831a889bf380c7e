//! One weight only in the upright balance.
//!
//! # What the learner did
//! Let the hinge and the rope carry only one of the weights.
//!
//! # Why it tempts
//! One weight is the load, and the other is thought of as part of the body.
//!
//! # Rewrite
//! Balance: of the weights, only the scope's stays in the vertical balance.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "one-weight-only",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let down = weights(problem, key);
        if down.len() > 1 {
            each(down)
        } else {
            Vec::new()
        }
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let kept = only(scope)?;
    Some(
        weights(problem, key)
            .into_iter()
            .filter(|id| *id != kept)
            .fold(key.clone(), |changed, id| {
                without_in(&changed, StepId::ForceSum(Axis::Vertical), id)
            }),
    )
}

/// The weights in the vertical balance.
pub(super) fn weights(problem: &Problem, key: &Key) -> Vec<ForceId> {
    let terms = key
        .balance(StepId::ForceSum(Axis::Vertical))
        .map(|balance| balance.terms.clone())
        .unwrap_or_default();
    terms
        .into_iter()
        .map(|term| term.force)
        .filter(|id| key.step(StepId::Weight(*id)).is_some() && problem.force(*id).is_some())
        .collect()
}
