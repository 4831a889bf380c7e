//! The rope's pull counted twice.
//!
//! # What the learner did
//! Counted the pull of the rope on the body, and once more as what the rope does at its other end.
//!
//! # Why it tempts
//! The rope is tied to two things, and pulls at both: only one of them is the body.
//!
//! # Rewrite
//! Model: the pull stands twice in the balances of forces.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, rope, with_amount};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "force-invented",
    family: "force-invented",
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
    let axes = [Axis::Horizontal, Axis::Vertical].into_iter();
    Some(axes.fold(key.clone(), |changed, axis| {
        with_amount(&changed, StepId::ForceSum(axis), id, |amount| {
            Formula::Number(2.0).times(amount.clone())
        })
    }))
}
