//! Divided by the distance.
//!
//! # What the learner did
//! Divided a force by its distance where the moment needs their product.
//!
//! # Why it tempts
//! It is felt that a force farther out needs less strength, and the division is carried to the
//! wrong force.
//!
//! # Rewrite
//! Balance: one known term has the force over its distance.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, over_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "divided-by-distance",
    family: "moment-divided",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |problem, key| each(known_turning(problem, key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(over_distance(key, only(scope)?))
}
