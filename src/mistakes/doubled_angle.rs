//! An angle doubled.
//!
//! # What the learner did
//! Took twice the angle between the force and the body.
//!
//! # Why it tempts
//! The angle stands on both sides of a line of symmetry, or the whole opening is read for its half.
//!
//! # Rewrite
//! Formula: the angle of a force becomes twice the angle.
//!
//! # Known false alarms
//! None known.
//!
//! # Source
//! Common practice, no source.

use super::rewriting::{each_angle, with_angle};
use super::{Kind, Mistake, Skill};
use crate::key::Formula;

/// The mistake.
pub(super) static MISTAKE: Mistake = Mistake {
    id: "doubled-angle",
    family: "angle-size",
    kind: Kind::Formula,
    skill: Skill::Angles,
    prior: 1.5,
    common: false,
    sign: None,
    scopes: |_, key| each_angle(key),
    rewrite: |_, key, scope| with_angle(key, scope, |angle| Formula::Number(2.0).times(angle)),
};
