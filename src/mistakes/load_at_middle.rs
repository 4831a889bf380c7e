//! A load at the middle.
//!
//! # What the learner did
//! Let a load act half-way along the body.
//!
//! # Why it tempts
//! The length and its half are the distances met most often.
//!
//! # Rewrite
//! Formula: the distance of a load.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, loads, only, placed};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "load-at-middle",
    family: "load-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |problem, key| each(loads(problem, key)),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    placed(problem, key, only(scope)?, Place::Middle)
}
