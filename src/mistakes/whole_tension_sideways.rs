//! The whole tension taken as level.
//!
//! # What the learner did
//! Put the whole tension into the horizontal balance.
//!
//! # Why it tempts
//! The rope is the only other force that pulls to the side, so it is set equal to the hinge's
//! part.
//!
//! # Rewrite
//! Balance: the rope's term in the horizontal balance is the whole pull.
//!
//! # Known false alarms
//! A level rope is whole in this balance.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull, size, with_amount};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "whole-tension-sideways",
    family: "horizontal-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 4.0,
    common: false,
    scopes: |_, key| {
        each(pull(key).filter(|id| key.step(StepId::PartOf(*id, Axis::Horizontal)).is_some()))
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let whole = size(problem, id)?;
    Some(with_amount(
        key,
        StepId::ForceSum(Axis::Horizontal),
        id,
        |_| whole.clone(),
    ))
}
