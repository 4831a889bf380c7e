//! A distance from the middle.
//!
//! # What the learner did
//! Measured the distance of a force from the middle of the body.
//!
//! # Why it tempts
//! The middle is where the own weight acts, and seems the natural centre of turning.
//!
//! # Rewrite
//! Formula: the distance becomes the distance from the middle.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{along_body, difference, each, only, turning, with_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::Key;
use crate::problem::{Place, Problem};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "from-the-middle",
    family: "distance-origin",
    kind: Kind::Formula,
    skill: Skill::Places,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        each(turning(key).into_iter().filter(|id| {
            problem
                .force(*id)
                .is_some_and(|force| force.at != Place::Middle)
        }))
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let place = problem.force(id)?.at;
    let values = problem.values();
    let beyond = problem.distance(place, &values) > problem.distance(Place::Middle, &values);
    let (at, middle) = (
        along_body(problem, place),
        along_body(problem, Place::Middle),
    );
    let distance = if beyond {
        difference(at, middle)
    } else {
        difference(middle, at)
    };
    Some(with_distance(key, id, distance))
}
