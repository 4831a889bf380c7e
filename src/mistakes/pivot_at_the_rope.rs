//! The distances of the weights measured from the place of the rope.
//!
//! # What the learner did
//! Measured how far each weight is from the place where the rope is tied, and left out what the
//! hinge does there; or gave the rope the share that this leaves for the hinge.
//!
//! # Why it tempts
//! There the rope has no moment, so the balance gets shorter; or the two supports are exchanged.
//!
//! # Rewrite
//! Balance: the distance of every known force is measured from the place of the rope, as if the rope
//! held the body at the hinge.
//!
//! # Known false alarms
//! With the rope at the far end and one load it agrees with a distance from the far end.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, measured_from, only, rope, turned};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "pivot-at-the-rope",
    family: "distance-origin",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| each(rope(key)),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let rope = only(scope)?;
    let moved = measured_from(problem, key, known_turning(problem, key), rope)?;
    Some(turned(&moved, StepId::MomentSum, rope))
}
