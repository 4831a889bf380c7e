//! Sine and cosine exchanged in the last step.
//!
//! # What the learner did
//! Divided by the cosine at the end where the sine belongs.
//!
//! # Why it tempts
//! The triangle of the rope is turned against that of the weights, and the same side was looked
//! for.
//!
//! # Rewrite
//! Formula: the ratio in the last step.
//!
//! # Known false alarms
//! At the pull it gives the same function as the exchange in the rope's component.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{
    acts_squarely, each, known_over_distance, only, pull, ratio_angle, with_pull,
};
use super::{Kind, Mistake, Scope, Skill, WRONG_LEG};
use crate::key::{Formula, Key};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "exchanged-at-the-end",
    family: WRONG_LEG,
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |_, key| each(pull(key).filter(|id| !acts_squarely(key, *id))),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let cosine = Formula::Cosine(Box::new(ratio_angle(key, id)?));
    Some(with_pull(key, id, known_over_distance(id).over(cosine)))
}
