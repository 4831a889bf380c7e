//! Weights resolved that act squarely on the body.
//!
//! # What the learner did
//! Multiplied the weights by a ratio of the rope's angle, though they act straight across the body.
//!
//! # Why it tempts
//! The rope's force is resolved, and all others are then resolved the same way.
//!
//! # Rewrite
//! Balance: every known term has the rope's ratio; the rope's own term keeps it, or is left whole.
//!
//! # Known false alarms
//! With the rope's ratio in its own term the ratio can be divided out, and what is left is a rope that
//! was not resolved: the terms tell the two apart.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{acts_squarely, known_turning, pull, ratio, with_across, with_amount};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "resolved-though-square",
    family: "angle-taken-over",
    kind: Kind::Balance,
    skill: Skill::Resolving,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let known = known_turning(problem, key);
        let square = !known.is_empty() && known.iter().all(|id| acts_squarely(key, *id));
        let oblique = pull(key).is_some_and(|id| !acts_squarely(key, id));
        match square && oblique {
            true => vec![Scope::Weights, Scope::Everywhere],
            false => Vec::new(),
        }
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let pull = pull(key)?;
    let ratio = ratio(key, pull)?;
    let key = match scope {
        Scope::Everywhere => with_across(problem, key, &[pull], |size, _| size),
        _ => key.clone(),
    };
    let known = known_turning(problem, &key).into_iter();
    Some(known.fold(key, |changed, id| {
        with_amount(&changed, StepId::MomentSum, id, |amount| {
            amount.clone().times(ratio.clone())
        })
    }))
}
