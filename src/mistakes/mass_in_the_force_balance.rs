//! A mass in the balance of upright forces.
//!
//! # What the learner did
//! Found the weights, and then put the mass of a body into the balance of upright forces.
//!
//! # Why it tempts
//! The masses stand in the problem, and the weights some lines above.
//!
//! # Rewrite
//! Balance: the terms of one weight or of all in the vertical balance become their masses.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{support, with_amount};
use super::{Kind, Mistake, Scope, Skill, covered, every_scope};
use crate::key::{Axis, Formula, Key, Role, StepId};
use crate::problem::{Problem, Size};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "mass-in-the-force-balance",
    family: "weight-from-mass",
    kind: Kind::Balance,
    skill: Skill::Weights,
    prior: 3.0,
    common: false,
    sign: None,
    scopes: |problem, key| match support(key) {
        Some(_) => every_scope(problem, key, StepId::Weight),
        None => Vec::new(),
    },
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let weights = covered(problem, key, scope, StepId::Weight).into_iter();
    Some(weights.fold(
        key.clone(),
        |changed, id| match problem.force(id).map(|force| force.size) {
            Some(Size::Weight(mass)) => {
                let mass = Formula::given(mass).tagged(Role::Weight(id));
                with_amount(&changed, StepId::ForceSum(Axis::Vertical), id, |_| {
                    mass.clone()
                })
            }
            _ => changed,
        },
    ))
}
