//! All weights placed where one of them acts.
//!
//! # What the learner did
//! Added the masses and let their weight act at one place.
//!
//! # Why it tempts
//! One arrow is less work than three, and "the load" sounds like one thing.
//!
//! # Rewrite
//! Formula: every known distance is that of the scope's force.
//!
//! # Known false alarms
//! With one load it agrees with the own weight at the load's place.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, placed};
use super::{Kind, Mistake, Skill};
use crate::problem::ForceId;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "all-mass-at-one-point",
    family: "load-place",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let known = known_turning(problem, key);
        // Two weights at the middle is a load at the middle.
        let apart = |id: &ForceId| known.len() > 2 || *id != ForceId::OwnWeight;
        each(
            known
                .iter()
                .copied()
                .filter(|id| known.len() > 1 && apart(id)),
        )
    },
    rewrite: |problem, key, scope| {
        let id = only(scope)?;
        let place = problem.force(id)?.at;
        let others = known_turning(problem, key).into_iter();
        others
            .filter(|other| *other != id)
            .try_fold(key.clone(), |moved, other| {
                placed(problem, &moved, other, place)
            })
    },
};
