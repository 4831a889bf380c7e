//! A rope that pushes.
//!
//! # What the learner did
//! Let the rope push the body, so that it turns it the way the weights do.
//!
//! # Why it tempts
//! The arrow of the rope is drawn towards the knot, as the arrow of a prop would be.
//!
//! # Rewrite
//! Model: the pull has the other sense in every balance.
//!
//! # Known false alarms
//! A negative pull may also be a sign that was lost on the way.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, rope, turned};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "rope-that-pushes",
    family: "rope-pushes",
    kind: Kind::Model,
    skill: Skill::Forces,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |_, key| each(rope(key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let sums = [Axis::Horizontal, Axis::Vertical].map(StepId::ForceSum);
    let balances = sums.into_iter().chain([StepId::MomentSum]);
    Some(balances.fold(key.clone(), |changed, balance| {
        turned(&changed, balance, id)
    }))
}
