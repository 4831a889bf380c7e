//! Multiplied where it must divide.
//!
//! # What the learner did
//! Multiplied the component by the sine at the end, where the whole force is the component over
//! the sine.
//!
//! # Why it tempts
//! All other components were found by multiplying.
//!
//! # Rewrite
//! Formula: the pull becomes the component times the ratio.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, each, known_over_distance, only, pull, ratio, with_pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "multiplied-at-the-end",
    family: "divides-for-multiplies",
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 5.0,
    common: true,
    sign: None,
    scopes: |_, key| each(pull(key).filter(|id| !acts_squarely(key, *id))),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    Some(with_pull(
        key,
        id,
        known_over_distance(id).times(ratio(key, id)?),
    ))
}
