//! A distance from the far end.
//!
//! # What the learner did
//! Measured the distance of a force from the end away from the hinge; or all distances, so that
//! moments about that end are balanced without the hinge's force.
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

use super::rewriting::{each, from_far_end, only, pull, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{ForceId, Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "from-the-far-end",
    family: "distance-origin",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 4.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let not_at_tip = |id: &ForceId| {
            let force = problem.force(*id);
            force.is_some_and(|force| force.at != Place::Tip)
        };
        let mut scopes = each(turning(key).into_iter().filter(not_at_tip));
        // A rope at the far end would have no moment about it, and nothing would be left to find.
        let foot = key.pivot == Place::Foot;
        if foot && pull(key).is_some_and(|pull| not_at_tip(&pull)) {
            scopes.push(Scope::Everywhere);
        }
        scopes
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let forces = match scope {
        Scope::Everywhere => turning(key),
        scope => vec![only(scope)?],
    };
    let mut changed = key.clone();
    for id in forces {
        changed = from_far_end(problem, &changed, id)?;
    }
    Some(changed)
}
