//! The rope's upward pull forgotten.
//!
//! # What the learner did
//! Left the rope out of the balance of upright forces.
//!
//! # Why it tempts
//! The rope has done its work in the moment balance and seems finished.
//!
//! # Rewrite
//! Balance: the rope's term leaves the vertical balance.
//!
//! # Known false alarms
//! A level rope has no such term.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "rope-pull-forgotten-upward",
    family: "vertical-balance",
    kind: Kind::Balance,
    skill: Skill::Reactions,
    prior: 5.0,
    common: false,
    sign: None,
    scopes: |_, key| each(pull(key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(without_in(
        key,
        StepId::ForceSum(Axis::Vertical),
        only(scope)?,
    ))
}
