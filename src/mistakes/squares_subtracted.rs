//! The squares of the parts subtracted for the resultant.
//!
//! # What the learner did
//! Took the root of the difference of the squares of the parts of the hinge's force.
//!
//! # Why it tempts
//! The same theorem with a minus gives a short side of a right triangle, and a part may be
//! negative.
//!
//! # Rewrite
//! Formula: the size becomes the root of the difference of the squares of the parts.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::components_added::resultants;
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, Part, Rule, StepId, difference};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "squares-subtracted",
    family: "resultant",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |_, key| resultants(key),
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(step @ StepId::Reaction(id, _)) = scope else {
        return None;
    };
    let square = |axis: Axis| {
        let part = Formula::step(StepId::Reaction(id, Part::Along(axis)));
        Formula::Square(Box::new(part))
    };
    // The larger square stands first, or there is no root.
    let apart = difference(square(Axis::Horizontal), square(Axis::Vertical));
    let root = Formula::SquareRoot(Box::new(Formula::Absolute(Box::new(apart))));
    Some(key.with_rule(step, Rule::Formula(root)))
}
