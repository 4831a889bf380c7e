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

use super::rewriting::{along_body, difference, known_turning, with_distance, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, StepId};
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
        changed = match problem.force(id)?.at {
            Place::Tip => without_in(&changed, StepId::MomentSum, id),
            at => {
                let length = Formula::given(problem.body().length);
                let rest = difference(length, along_body(problem, at));
                with_distance(&changed, id, rest)
            }
        };
    }
    Some(changed)
}
