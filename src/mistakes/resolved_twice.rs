//! The ratio taken twice.
//!
//! # What the learner did
//! Took the component of the force and then also the lever arm: the sine stands on the force and
//! on the distance.
//!
//! # Why it tempts
//! Both ways are taught, each is right alone, and together they look thorough.
//!
//! # Rewrite
//! Balance: the term gains the ratio of its force once more, for one force, all weights, or all.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{ratio, with_amount};
use super::{Kind, Mistake, Scope, Skill, covered, every_scope};
use crate::key::{Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "resolved-twice",
    family: "wrong-ratio",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |problem, key| every_scope(problem, key, StepId::Across),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = covered(problem, key, scope, StepId::Across);
    Some(
        forces
            .into_iter()
            .fold(key.clone(), |changed, id| match ratio(key, id) {
                Some(ratio) => with_amount(&changed, StepId::MomentSum, id, |amount| {
                    amount.clone().times(ratio.clone())
                }),
                None => changed,
            }),
    )
}
