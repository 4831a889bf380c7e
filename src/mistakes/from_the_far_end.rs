//! A distance from the far end.
//!
//! # What the learner did
//! Measured the distance of a force from the end away from the hinge.
//!
//! # Why it tempts
//! The far end is as good a mark in the drawing as the hinge.
//!
//! # Rewrite
//! Formula: the distance becomes the length less the distance from the foot.
//!
//! # Known false alarms
//! A force at the middle has the same distance from both ends.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{along_body, difference, each, only, turning, with_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key};
use crate::problem::{Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "from-the-far-end",
    family: "distance-origin",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 4.0,
    common: false,
    scopes: |problem, key| {
        each(turning(key).into_iter().filter(|id| {
            problem
                .force(*id)
                .is_some_and(|force| force.at != Place::Tip)
        }))
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let at = along_body(problem, problem.force(id)?.at);
    let length = Formula::given(problem.body().length);
    Some(with_distance(key, id, difference(length, at)))
}
