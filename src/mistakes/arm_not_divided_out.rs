//! The distance not divided out.
//!
//! # What the learner did
//! Solved for the rope without dividing by its distance.
//!
//! # Why it tempts
//! The ratio is the new thing in the last step, and the distance is forgotten beside it.
//!
//! # Rewrite
//! Formula: the pull becomes the known moments over the ratio alone.
//!
//! # Known false alarms
//! A rope at one metre hides it.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, pull, ratio, with_pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "arm-not-divided-out",
    family: "moment-for-force",
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 4.0,
    common: true,
    sign: None,
    scopes: |_, key| each(pull(key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let moments = Formula::step(StepId::KnownMoments);
    Some(with_pull(
        key,
        id,
        match ratio(key, id) {
            Some(ratio) => moments.over(ratio),
            None => moments,
        },
    ))
}
