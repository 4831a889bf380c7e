//! A load at the rope.
//!
//! # What the learner did
//! Let a load act where the rope is tied.
//!
//! # Why it tempts
//! Two distances are printed side by side, and the rope's was read for the load's.
//!
//! # Rewrite
//! Formula: the distance of a load.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, loads, only, placed, rope};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "load-at-rope",
    family: "load-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        if rope(key).is_some() {
            each(loads(problem, key))
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
