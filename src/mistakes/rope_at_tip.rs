//! The rope at the far end.
//!
//! # What the learner did
//! Let the rope pull at the far end of the body.
//!
//! # Why it tempts
//! A rope tied there is the picture most often seen.
//!
//! # Rewrite
//! Formula: the distance of the rope.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, placed, rope};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "rope-at-tip",
    family: "rope-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |_, key| each(rope(key)),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    placed(problem, key, only(scope)?, Place::Tip)
}
