//! The angle on the other side of a line.
//!
//! # What the learner did
//! Took 180° less the angle between the force and the body.
//!
//! # Why it tempts
//! Two lines that cross make both angles, and either may be read off a sketch.
//!
//! # Rewrite
//! Formula: the angle of a force becomes 180° less it.
//!
//! # Known false alarms
//! Its sine is the same, so the component across the body comes out right.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{difference, each, only, turning};
use super::{Kind, Mistake, Scope, Skill};
use crate::key::{Formula, Key, Rule, StepId};
use crate::problem::Problem;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "wrong-supplement",
    family: "angle-size",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 2.0,
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
    let other = difference(Formula::Degrees(180.0), key.formula(step)?);
    Some(key.with_rule(step, Rule::Formula(other)))
}
