//! The angle of another force.
//!
//! # What the learner did
//! Used the rope's angle with the body for the weights, or the weights' angle for the rope.
//!
//! # Why it tempts
//! The drawing shows one angle largest, and it is taken for all.
//!
//! # Rewrite
//! Formula: the angle of one force is that of the other.
//!
//! # Known false alarms
//! Where the two add to a right angle it agrees with the complementary angle.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only};
use super::{Kind, Mistake, Skill};
use crate::key::{Key, StepId};
use crate::problem::ForceId;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "angle-of-another-force",
    family: "angle-taken-over",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 2.0,
    common: false,
    sign: None,
    scopes: |_, key| match angled(key).as_slice() {
        [one, other] => each([*one, *other]),
        _ => Vec::new(),
    },
    rewrite: |_, key, scope| {
        let id = only(scope)?;
        let other = angled(key).into_iter().find(|other| *other != id)?;
        let rule = key.step(StepId::Angle(other))?.rule.clone();
        Some(key.with_rule(StepId::Angle(id), rule))
    },
};

/// The forces that an angle with the body is found for.
fn angled(key: &Key) -> Vec<ForceId> {
    let found = key.steps.iter().filter_map(|step| match step.id {
        StepId::Angle(force) => Some(force),
        _ => None,
    });
    found.collect()
}
