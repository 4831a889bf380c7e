//! A right balance solved wrongly.
//!
//! # What the learner did
//! Moved a moment to the other side without turning its sign.
//!
//! # Why it tempts
//! Terms are carried across the sign of equality by eye.
//!
//! # Rewrite
//! Formula: in the last step one known moment has the other sign.
//!
//! # Known false alarms
//! Where no balance stands before it, a moment with the wrong sense gives the same.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, pull, several_known, turned, with_pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "solved-wrongly",
    family: "solving",
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |problem, key| match several_known(problem, key) {
        true => each(known_turning(problem, key)),
        false => Vec::new(),
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = pull(key)?;
    let balance = StepId::MomentSum;
    let (known, factor) = turned(key, balance, only(scope)?).solved(StepId::Pull(id), balance)?;
    Some(with_pull(key, id, known.over(factor)))
}
