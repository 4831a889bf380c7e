//! The hinge's force in the direction of the rope.
//!
//! # What the learner did
//! Gave the slope of the rope's pull, or the ratio of that pull's two parts, as the direction of the
//! hinge's force.
//!
//! # Why it tempts
//! The parts of the pull stand just above in the working, and the level part of the hinge's force is
//! as large as that of the pull.
//!
//! # Rewrite
//! Formula: the direction of the hinge's force is the angle of the pull with the horizontal.
//!
//! # Known false alarms
//! Where all weights act in the middle between hinge and rope the two slopes are the same.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{direction_of_support, pull};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Axis, Formula, Key, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "reaction-along-the-pull",
    family: "resultant-angle",
    kind: Kind::Formula,
    skill: Skill::Reactions,
    prior: 0.0,
    common: false,
    sign: None,
    scopes: |_, key| {
        let step = direction_of_support(key).filter(|_| slope(key).is_some());
        step.map(Scope::Here).into_iter().collect()
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let Scope::Here(step) = scope else {
        return None;
    };
    Some(key.with_rule(step, Rule::Formula(slope(key)?)))
}

/// The angle of an oblique pull with the horizontal, as it stands in its level part.
fn slope(key: &Key) -> Option<Formula> {
    let part = key.formula(StepId::PartOf(pull(key)?, Axis::Horizontal))?;
    angle(&part)
}

fn angle(formula: &Formula) -> Option<Formula> {
    match formula {
        Formula::Cosine(slope) => Some(slope.as_ref().clone()),
        other => other.children().into_iter().find_map(angle),
    }
}
