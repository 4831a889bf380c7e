//! A weight that does not point straight down.
//!
//! # What the learner did
//! Took the component of a weight across the body for all of it in the vertical balance.
//!
//! # Why it tempts
//! The weights were resolved for the moments, and the components are at hand.
//!
//! # Rewrite
//! Balance: the component of the weight stands in the vertical balance.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::with_amount;
use super::{Kind, Mistake, Scope, Skill, covered};
use crate::key::{Axis, Formula, Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "weight-not-downward",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 2.5,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let weights = resolved(problem, key, Scope::Weights);
        let mut scopes: Vec<Scope> = weights.iter().map(|id| Scope::Force(*id)).collect();
        scopes.extend((weights.len() > 1).then_some(Scope::Weights));
        scopes
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let weights = resolved(problem, key, scope).into_iter();
    Some(weights.fold(key.clone(), |changed, id| {
        let balance = StepId::ForceSum(Axis::Vertical);
        with_amount(&changed, balance, id, |_| Formula::step(StepId::Across(id)))
    }))
}

/// The weights of a scope that have a component across the body.
fn resolved(problem: &Problem, key: &Key, scope: Scope) -> Vec<ForceId> {
    let mut weights = covered(problem, key, scope, StepId::Across);
    weights.retain(|id| key.step(StepId::Weight(*id)).is_some());
    weights
}
