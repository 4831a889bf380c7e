//! Moments about another point, without the force of the hinge.
//!
//! # What the learner did
//! Took moments about the place of a force, and left out what the hinge does there.
//!
//! # Why it tempts
//! A force at the pivot has no moment, so the balance gets shorter; that the hinge now has one is
//! forgotten.
//!
//! # Rewrite
//! Balance: every distance is measured from the place of one known force, which drops out.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{along_body, difference, each, known_turning, only, pull, turned, turning};
use super::rewriting::{with_distance, without_in};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Key, StepId};
use crate::problem::{ForceId, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "wrong-pivot-without-the-hinge-term",
    family: "distance-origin",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let mut forces = known_turning(problem, key);
        // About the place of the rope its pull could not be found.
        forces.retain(|id| pull(key).is_some_and(|pull| apart(problem, *id, pull) != 0.0));
        each(forces)
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let pivot = only(scope)?;
    let from = problem.force(pivot)?.at;
    let values = problem.values();
    let mut changed = key.clone();
    for id in turning(key) {
        let at = problem.force(id)?.at;
        let after = apart(problem, id, pivot);
        if after == 0.0 {
            changed = without_in(&changed, StepId::MomentSum, id);
            continue;
        }
        let (at_length, from_length) = (along_body(problem, at), along_body(problem, from));
        let distance = match after > 0.0 {
            true => difference(at_length, from_length),
            false => difference(from_length, at_length),
        };
        changed = with_distance(&changed, id, distance);
        let before = problem.distance(at, &values) - problem.distance(key.pivot, &values);
        if before * after < 0.0 {
            changed = turned(&changed, StepId::MomentSum, id);
        }
    }
    Some(changed)
}

/// How far the one force acts beyond the other along the body, in metres; nothing where both act
/// at one place.
fn apart(problem: &Problem, one: ForceId, other: ForceId) -> f64 {
    let values = problem.values();
    let along = |id: ForceId| {
        let force = problem.force(id);
        force.map_or(0.0, |force| problem.distance(force.at, &values))
    };
    let apart = along(one) - along(other);
    if apart.abs() < 1e-9 { 0.0 } else { apart }
}
