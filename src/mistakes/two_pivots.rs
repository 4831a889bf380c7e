//! Distances of one balance from two points.
//!
//! # What the learner did
//! Measured the distances of the loads from the far end, and that of the rope from the hinge.
//!
//! # Why it tempts
//! The problem tells each distance from the end that is nearer, or the sketch does.
//!
//! # Rewrite
//! Balance: the distances of all known forces are those from the far end.
//!
//! # Known false alarms
//! With one load that is not at the tip it is a distance measured from the far end.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{from_far_end, known_turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "two-pivots",
    family: "distance-origin",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let known = known_turning(problem, key);
        let moved = known.iter().filter(|id| {
            let force = problem.force(**id);
            force.is_some_and(|force| force.at != Place::Middle)
        });
        let all = key.pivot == Place::Foot && moved.count() > 1;
        all.then_some(Scope::Weights).into_iter().collect()
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, _: Scope) -> Option<Key> {
    let mut changed = key.clone();
    for id in known_turning(problem, key) {
        changed = from_far_end(problem, &changed, id)?;
    }
    Some(changed)
}
