//! A moment given as the force.
//!
//! # What the learner did
//! Gave the sum of the known moments as the tension.
//!
//! # Why it tempts
//! The sum is the last number on the page, and it stands alone on its side.
//!
//! # Rewrite
//! Formula: the pull becomes the known moments. Where the rope acts squarely it is the mistake of
//! the distance not divided out, and is not listed twice.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, each, only, pull, with_pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "moment-called-force",
    family: "moment-for-force",
    kind: Kind::Formula,
    skill: Skill::Solving,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |_, key| each(pull(key).filter(|id| !acts_squarely(key, *id))),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    Some(with_pull(
        key,
        only(scope)?,
        Formula::step(StepId::KnownMoments),
    ))
}
