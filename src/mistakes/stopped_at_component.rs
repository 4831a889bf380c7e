//! Stopped at the component.
//!
//! # What the learner did
//! Gave the component across the body as the tension.
//!
//! # Why it tempts
//! The balance gives the component first, and it already is a force of the rope.
//!
//! # Rewrite
//! Formula: the pull becomes the known moments over the distance.
//!
//! # Known false alarms
//! A learner who called this component by the tension's name on the way and goes on is right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, each, known_over_distance, only, pull, with_pull};
use super::{Kind, Mistake, NOT_RESOLVED, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "stopped-at-component",
    family: NOT_RESOLVED,
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 6.0,
    common: true,
    sign: None,
    scopes: |_, key| each(pull(key).filter(|id| !acts_squarely(key, *id))),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    Some(with_pull(key, id, known_over_distance(id)))
}
