//! Divided by the distance.
//!
//! # What the learner did
//! Divided a force by its distance where the moment needs their product.
//!
//! # Why it tempts
//! It is felt that a force farther out needs less strength, and the division is carried to the
//! wrong force.
//!
//! # Rewrite
//! Balance: one known term has the force over its distance.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, known_turning, only, with_amount, without_distance};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Role, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "divided-by-distance",
    family: "moment-divided",
    kind: Kind::Balance,
    skill: Skill::Moments,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |problem, key| each(known_turning(problem, key)),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let id = only(scope)?;
    let distance = Formula::step(StepId::Distance(id)).tagged(Role::Distance(id));
    Some(with_amount(key, StepId::MomentSum, id, |amount| {
        without_distance(amount).over(distance.clone())
    }))
}
