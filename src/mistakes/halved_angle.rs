//! An angle halved.
//!
//! # What the learner did
//! Took half the angle between the force and the body.
//!
//! # Why it tempts
//! An angle that is halved by a line of symmetry in one drawing is halved in the next one as well.
//!
//! # Rewrite
//! Formula: the angle of a force becomes half the angle.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each, only, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "halved-angle",
    family: "angle-size",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |_, key| {
        let mut forces = turning(key);
        forces.retain(|id| key.step(StepId::Angle(*id)).is_some());
        each(forces)
    },
    rewrite,
};

fn rewrite(_: &Problem, key: &Key, scope: Scope) -> Option<Key> {
    let step = StepId::Angle(only(scope)?);
    let angle = key.formula(step)?;
    let changed = angle.over(Formula::Number(2.0));
    Some(key.with_rule(step, Rule::Formula(changed)))
}
