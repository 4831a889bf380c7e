//! The parts added for the resultant, each with its sign.
//!
//! # What the learner did
//! Added the two parts of the support's force as they stand, where one of them points left or down.
//!
//! # Why it tempts
//! Numbers that belong to one force are added as they are.
//!
//! # Rewrite
//! Formula: the size becomes the sum of the parts.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::components_added::resultants;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, Part, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "parts-added-with-signs",
    family: "resultant",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| resultants(key),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(step @ StepId::Reaction(id, _)) = scope else {
        return None;
    };
    let part = |axis: Axis| Formula::step(StepId::Reaction(id, Part::Along(axis)));
    let sum = Formula::Sum(vec![part(Axis::Horizontal), part(Axis::Vertical)]);
    Some(key.with_rule(step, Rule::Formula(sum)))
}
