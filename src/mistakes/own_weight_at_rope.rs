//! The own weight at the rope.
//!
//! # What the learner did
//! Let the body's weight act where the rope is tied.
//!
//! # Why it tempts
//! The rope holds the body, so it seems to hold the weight at that place.
//!
//! # Rewrite
//! Formula: the distance of the own weight.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, placed, rope, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "own-weight-at-rope",
    family: "own-weight-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        if rope(key).is_some() {
            each(
                turning(key)
                    .into_iter()
                    .filter(|id| *id == ForceId::OwnWeight),
            )
        } else {
            Vec::new()
        }
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let tied = problem.force(rope(key)?)?.at;
    placed(problem, key, only(scope)?, tied)
}
