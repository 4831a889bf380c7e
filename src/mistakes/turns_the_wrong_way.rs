//! A term on the wrong side.
//!
//! # What the learner did
//! Gave one moment the wrong sense, so that it stands on the wrong side of the balance.
//!
//! # Why it tempts
//! Up and down, left and right are seen at once; which way a force turns must be imagined.
//!
//! # Rewrite
//! Balance: the sign of one known term of the moment balance.
//!
//! # Known false alarms
//! A learner who counts clockwise as positive throughout is right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, turned};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "turns-the-wrong-way",
    family: "turning-sense",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 5.0,
    common: true,
    sign: None,
    scopes: |problem, key| each(known_turning(problem, key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(turned(key, StepId::MomentSum, only(scope)?))
}
