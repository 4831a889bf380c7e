//! The mass divided by g.
//!
//! # What the learner did
//! Divided the mass by g instead of multiplying.
//!
//! # Why it tempts
//! The same three quantities stand in both, and W = m·g was turned round to the wrong side.
//!
//! # Rewrite
//! Formula: the weight step, for one body or for all.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::mass_for_weight::weighed;
use super::{Kind, Mistake, Scope, Skill, every_scope};
use crate::key::{Atom, Formula, Key, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "divided-by-g",
    family: "weight-from-mass",
    kind: Kind::Formula,
    skill: Skill::Weights,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |problem, key| every_scope(problem, key, StepId::Weight),
    rewrite,
};

fn rewrite(problem: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let divided = |mass: Formula| mass.over(Formula::Atom(Atom::Gravity));
    Some(weighed(problem, key, scope, divided))
}
