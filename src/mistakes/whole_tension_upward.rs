//! The whole tension taken as upright.
//!
//! # What the learner did
//! Put the whole tension into the vertical balance.
//!
//! # Why it tempts
//! The rope holds the body up, so its pull is thought of as upward.
//!
//! # Rewrite
//! Balance: the rope's term in the vertical balance is the whole pull.
//!
//! # Known false alarms
//! An upright rope is whole in this balance.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull, size, with_amount};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "whole-tension-upward",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 3.0,
    common: false,
    scopes: |_, key| {
        each(pull(key).filter(|id| key.step(StepId::PartOf(*id, Axis::Vertical)).is_some()))
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let whole = size(problem, id)?;
    Some(with_amount(
        key,
        StepId::ForceSum(Axis::Vertical),
        id,
        |_| whole.clone(),
    ))
}
