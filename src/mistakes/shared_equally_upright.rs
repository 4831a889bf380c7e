//! Two supports that share equally, where the rope pulls aslant.
//!
//! # What the learner did
//! Gave the upright part of the rope's pull half of all weights, and the hinge the other half.
//!
//! # Why it tempts
//! Two supports look alike, and in the first examples everything stands in the middle.
//!
//! # Rewrite
//! Formula: the pull is half of all weights together over its ratio.
//!
//! # Known false alarms
//! With every load in the middle and the rope at the far end it is right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, known_turning, pull, ratio, with_pull};
use super::shared_equally::half_of_all;
use super::{Kind, Mistake, SHARED_OUT, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "shared-equally-upright",
    family: SHARED_OUT,
    kind: Kind::Formula,
    skill: Skill::Moments,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let known = known_turning(problem, key);
        let is_square = |id| key.step(StepId::Weight(id)).is_some() && acts_squarely(key, id);
        let square = known.len() > 1 && known.into_iter().all(is_square);
        let oblique = pull(key).is_some_and(|id| !acts_squarely(key, id));
        (square && oblique)
            .then_some(Scope::Pull)
            .into_iter()
            .collect()
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, _: Scope) -> Option<Key> {
    let id = pull(key)?;
    let half = half_of_all(problem, key)?;
    Some(with_pull(key, id, half.over(ratio(key, id)?)))
}
