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

use super::rewriting::{apart, each, known_turning, measured_from, only, pull, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::Problem;

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
    measured_from(problem, key, turning(key), only(scope)?)
}
