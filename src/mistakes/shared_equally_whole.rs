//! Two supports that share equally, with the whole of a rope that pulls aslant.
//!
//! # What the learner did
//! Gave the whole pull of the rope half of all weights, and the hinge the other half.
//!
//! # Why it tempts
//! Two supports look alike, and in the first examples everything stands in the middle.
//!
//! # Rewrite
//! Formula: the pull is half of all weights together.
//!
//! # Known false alarms
//! None known: a part of the pull is level.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, known_turning, pull, with_pull};
use super::shared_equally::half_of_all;
use super::{Kind, Mistake, SHARED_OUT, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "shared-equally-whole",
    family: SHARED_OUT,
    kind: Kind::Formula,
    skill: Skill::Moments,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let mut known = known_turning(problem, key).into_iter();
        let all_weights = known.all(|id| key.step(StepId::Weight(id)).is_some());
        let oblique = pull(key).is_some_and(|id| !acts_squarely(key, id));
        (all_weights && oblique)
            .then_some(Scope::Pull)
            .into_iter()
            .collect()
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, _: Scope) -> Option<Key> {
    Some(with_pull(key, pull(key)?, half_of_all(problem, key)?))
}
