//! The part across the body taken for a level or an upright one.
//!
//! # What the learner did
//! Put the pull's part across the body into the balance of forces along an axis.
//!
//! # Why it tempts
//! That part was worked out for the moment balance and stands on the sheet already.
//!
//! # Rewrite
//! Formula: the part along the axis becomes the part across the body.
//!
//! # Known false alarms
//! None: of a level body, whose part across it is the upright one, it is not thought.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{parts_along, pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Rule, StepId};
use crate::problem::{Problem, Tilt};

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "across-for-part",
    family: "wrong-leg",
    kind: Kind::Formula,
    skill: Skill::Resolving,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |problem, key| {
        let tilted = problem.body().tilt != Tilt::Level;
        let across = |id: &StepId| {
            let force = id.force().filter(|force| pull(key) == Some(*force));
            force.is_some_and(|force| key.step(StepId::Across(force)).is_some())
        };
        let parts = parts_along(key).filter(|id| tilted && across(id));
        parts.map(Scope::Here).collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(part @ StepId::PartOf(force, _)) = scope else {
        return None;
    };
    let across = Formula::step(StepId::Across(force));
    Some(key.with_rule(part, Rule::Formula(across)))
}
